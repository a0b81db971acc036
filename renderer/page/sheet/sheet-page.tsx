/** The sheet's page: the sheet as it will be printed, with what can be done with it above. */
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { Crop } from '#core/frame/crop.ts'
import { type Plan } from '#core/plan/plan.ts'
import { type Zone, civilDayOf, formatDay, isZone } from '#core/time/civil.ts'
import { ask, inShell } from '#renderer/host/host.ts'
import { assessmentOf, daylightOf } from '#renderer/state/plan/assessments.ts'
import { spotName } from '#renderer/text/names.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { type Pins, pinPlaces, pinsFor } from '#renderer/state/plan/pin-heights.ts'
import { tolerancesFor } from '#renderer/state/plan/shelf-tolerances.ts'
import { changeSettings, settings } from '#renderer/state/library/settings.ts'
import { type GroundAround, groundFor } from '#renderer/state/plan/terrain.ts'
import { FALLBACK_ZONE, findZones } from '#renderer/state/plan/zone.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { GROUND_WAIT } from './ground-wait.ts'
import { fitPage } from './fit-page.ts'
import { sheetFile } from './save-html.ts'
import { download, fileNameOf } from '#renderer/host/download.ts'
import { SheetDocument } from './sheet-document.tsx'
import { useBaseMap } from '#renderer/view/still-map/use-base-map.ts'
import { chosenCrop } from '#renderer/view/lens-view/guide-choice.ts'
import './sheet.css'
import './phone.css'

interface SheetPageProps {
  readonly plan: Plan
  /** Null where there is nothing to go back to: the page that is only printed. */
  readonly onBack: (() => void) | null
}

/** The page's paper as the printer must take it; set through the style sheet, since the content policy allows no inline style. */
function usePaper(paper: 'a4' | 'letter'): void {
  useEffect(() => {
    const sheet = new CSSStyleSheet()
    sheet.replaceSync(`@page { size: ${paper === 'a4' ? 'A4' : 'letter'} portrait; margin: 10mm }`)
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet]
    document.documentElement.dataset['paper'] = paper
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((other) => other !== sheet)
      delete document.documentElement.dataset['paper']
    }
  }, [paper])
}

/** The clock of the place, waited for: a sheet must not be printed by another one. */
function useZone({ shoot, spot }: Plan): Zone | null {
  const [found, setFound] = useState<Zone | null>(null)
  useEffect(() => {
    let gone = false
    void findZones(spot.stop.at).then(([first]) => {
      if (!gone) setFound(first ?? FALLBACK_ZONE)
    })
    return () => {
      gone = true
    }
  }, [spot.stop.at])
  return shoot.zone !== null && isZone(shoot.zone) ? shoot.zone : found
}

/** The ground of the place, waited for, but not for ever: without it the sheet says so. */
function useGround({ shoot, spot, landmark }: Plan): {
  readonly ground: GroundAround
  readonly pins: Pins
  readonly late: boolean
} {
  const ground = groundFor(spot.stop.at, landmark)
  const pins = pinsFor(pinPlaces(shoot, spot))
  const [late, setLate] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setLate(!groundFor(spot.stop.at, landmark).settled), GROUND_WAIT)
    return () => clearTimeout(timer)
    // Once, from the sheet's opening on.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [])
  // What fails after it was too late was too late all the same: a sheet that is being read does not change its word.
  return { ground, pins, late: late && !(ground.settled && ground.trouble === null) }
}

export function SheetPage({ plan: flat, onBack }: SheetPageProps) {
  const { paper, units } = settings.value
  usePaper(paper)
  const base = useBaseMap(settings.value, false)
  const place = useRef<HTMLDivElement>(null)
  const [missing, setMissing] = useState(0)
  const [now] = useState(() => Date.now())
  const { ground, pins, late } = useGround(flat)
  const plan = { ...flat, terrain: ground.grid, pins: pins.pins }
  const assessment = assessmentOf(plan)
  const zone = useZone(plan)
  const title = spotName(plan.spot)
  const crop = chosenCrop(plan.shoot.crops)
  const fit = (): void => {
    const sheet = place.current?.querySelector<HTMLElement>('.sheet-fit')
    if (sheet !== null && sheet !== undefined) fitPage(sheet, paper)
  }
  // Whatever was drawn again may need another size.
  useLayoutEffect(fit)
  const painted = (result: { readonly missing: number }): void => {
    setMissing(result.missing)
    void document.fonts.ready.then(() => {
      fit()
      document.documentElement.dataset['ready'] = 'yes'
    })
  }
  useEffect(() => () => void delete document.documentElement.dataset['ready'], [])
  return (
    <main class="sheet-page">
      {onBack === null ? null : (
        <nav class="sheet-bar" aria-label={sheetWords.title}>
          <button type="button" class="button" onClick={onBack}>
            {sheetWords.back}
          </button>
          <h1>{sheetWords.title}</h1>
          <label>
            {sheetWords.paper}{' '}
            <select
              value={paper}
              onChange={(event) =>
                void changeSettings({ paper: event.currentTarget.value === 'letter' ? 'letter' : 'a4' })
              }
            >
              <option value="a4">{sheetWords.papers.a4}</option>
              <option value="letter">{sheetWords.papers.letter}</option>
            </select>
          </label>
          <button type="button" class="button" onClick={() => void saveFile(place.current, title)}>
            {sheetWords.html}
          </button>
          <button type="button" class="button button-main" onClick={() => void print(plan, paper, title, crop)}>
            {inShell() ? sheetWords.pdf : sheetWords.print}
          </button>
        </nav>
      )}
      <div class="sheet-desk" ref={place} tabIndex={0} role="region" aria-label={title}>
        {base === null || zone === null || !((ground.settled && pins.settled) || late) ? null : (
          <SheetDocument
            plan={plan}
            assessment={assessment}
            daylight={daylightOf(plan, zone)}
            tolerances={tolerancesFor(plan, zone)}
            units={units}
            base={base}
            crop={crop}
            elevations={plan.terrain === null ? [] : (ground.found?.sources ?? [])}
            day={formatDay(civilDayOf(now, zone).date)}
            missing={missing}
            groundMissing={late ? 'late' : ground.trouble === null ? 'none-known' : 'failed'}
            onPainted={painted}
          />
        )}
      </div>
    </main>
  )
}

async function saveFile(place: HTMLElement | null, title: string): Promise<void> {
  const sheet = place?.querySelector('.sheet') ?? null
  if (sheet === null) return
  const name = fileNameOf(title, '.html')
  download(name, await sheetFile(sheet, title), 'text/html')
  tell('done', sheetWords.savedAs(name))
}

async function print(plan: Plan, paper: 'a4' | 'letter', title: string, crop: Crop | null): Promise<void> {
  if (!inShell()) {
    globalThis.print()
    return
  }
  const answer = await ask('sheet.pdf', {
    shootId: plan.shoot.id,
    spotId: plan.spot.id,
    paper,
    title: title.slice(0, 200),
    crop,
  })
  if (!answer.ok) tell('fault', answer.fault.message)
  else if (answer.value.saved) tell('done', sheetWords.savedAs(answer.value.name))
}
