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
      <button type="button" onClick={() => setTries(tries + 1)}>
        {again}
      </button>
    </div>
  )
}
