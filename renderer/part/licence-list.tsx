/** The licences of Standpoint and of what it is made of, in full, under Help: folded away until asked for. */
import { useEffect, useState } from 'preact/hooks'
import { type Licence, LICENCES_FILE, type Licences } from '#app/licence.ts'
import { words } from '#renderer/words/en.ts'
import { Fold } from './question.tsx'

/** Null while it is read, `none` when it cannot be. */
type Read = Licences | 'none' | null

async function readLicences(signal: AbortSignal): Promise<Read> {
  try {
    const response = await fetch(`/${LICENCES_FILE}`, { signal })
    return response.ok ? ((await response.json()) as Licences) : 'none'
  } catch {
    return 'none'
  }
}

export function LicenceList() {
  const say = words.board.helpPage
  const [licences, setLicences] = useState<Read>(null)
  useEffect(() => {
    const left = new AbortController()
    void readLicences(left.signal).then((read) => {
      if (!left.signal.aborted) setLicences(read)
    })
    return () => left.abort()
  }, [])
  if (licences === null) return null
  if (licences === 'none') return <p>{say.licencesNotRead}</p>
  return (
    <div class="licences">
      <p>{say.licencesWhat}</p>
      <Fold title={say.licenceOwn}>
        <LicenceText text={licences.own} />
      </Fold>
      <Fold title={say.licencesData(licences.data.length)}>
        <LicenceFolds licences={licences.data} />
      </Fold>
      <Fold title={say.licencesSoftware(licences.software.length)}>
        <LicenceFolds licences={licences.software} />
      </Fold>
    </div>
  )
}

function LicenceFolds({ licences }: { readonly licences: readonly Licence[] }) {
  return (
    <ul>
      {licences.map(({ name, licence, text }) => (
        <li key={name}>
          <Fold title={words.board.helpPage.licenceLine(name, licence)}>
            <LicenceText text={text} />
          </Fold>
        </li>
      ))}
    </ul>
  )
}

/** Most texts are wrapped by hand, at a width of their own: their paragraphs are kept, their line ends are not. */
function LicenceText({ text }: { readonly text: string }) {
  return (
    <div class="licence-text">
      {text.split(/\n\s*\n/).map((paragraph, at) => (
        // oxlint-disable-next-line react/no-array-index-key -- a text that never changes
        <p key={at}>{paragraph.trim()}</p>
      ))}
    </div>
  )
}
