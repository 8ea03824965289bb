import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'

export interface LatePartProps<Props> {
  /** A constant function: what it brings is fetched once. */
  readonly fetchPart: () => Promise<ComponentType<Props>>
  readonly props: Props
  readonly waiting: string
  /** When it cannot be fetched: the server is away, or serves another build by now. */
  readonly failed: string
  readonly again: string
}

/** A part of the desk that is fetched when somebody goes there, so that the desk opens without it. */
export function LatePart<Props extends object>({ fetchPart, props, waiting, failed, again }: LatePartProps<Props>) {
  const [part, setPart] = useState<{ readonly Shown: ComponentType<Props> } | null>(null)
  const [tries, setTries] = useState(0)
  const [hasFailed, setFailed] = useState(false)
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked again, it is fetched again.
  useEffect(() => {
    let isCurrent = true
    setFailed(false)
    fetchPart().then(
      (Shown) => isCurrent && setPart({ Shown }),
      () => isCurrent && setFailed(true),
    )
    return () => {
      isCurrent = false
    }
  }, [fetchPart, tries])
  if (part !== null) return <part.Shown {...props} />
  if (!hasFailed) return <p class="desk-quiet">{waiting}</p>
  return (
    <div class="desk-line" role="alert">
      <p class="desk-trouble">{failed}</p>
      <button
        type="button"
        onClick={() => {
          fetchStylesAgain()
          setTries(tries + 1)
        }}
      >
        {again}
      </button>
    </div>
  )
}

/** What fetches a part asks once for its style sheets: one that failed is not asked for again with the part. */
function fetchStylesAgain(): void {
  for (const link of document.querySelectorAll('link[rel="stylesheet"]'))
    if (link instanceof HTMLLinkElement && !isStyled(link)) link.replaceWith(link.cloneNode())
}

/** The rules of a sheet that could not be fetched cannot be read. */
function isStyled({ sheet }: HTMLLinkElement): boolean {
  try {
    return sheet !== null && sheet.cssRules.length > 0
  } catch {
    return false
  }
}
