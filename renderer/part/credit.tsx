/** Whose data a source gives: the attribution, with its link where there is one. */

interface CreditProps {
  readonly source: { readonly attribution: string; readonly attributionLink: string }
}

export function Credit({ source }: CreditProps) {
  return (
    <p class="hint">
      {source.attributionLink === '' ? (
        source.attribution
      ) : (
        <a href={source.attributionLink} target="_blank" rel="noreferrer">
          {source.attribution}
        </a>
      )}
    </p>
  )
}
