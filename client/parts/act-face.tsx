import type { RingState } from './ring.tsx'
import { Ring } from './ring.tsx'

export interface ActFaceProps {
  /** Verb first: "Flip 2". */
  readonly what: string
  /** "in 40 s", "now", "3 min late"; nothing when the act has no time. */
  readonly when?: string | undefined
  /** What it is done to: "Everything 36, Salt 12". */
  readonly contents?: string | undefined
  readonly ring: { readonly fraction: number; readonly state: RingState }
}

/** An act with its countdown: the face of a shelf's key on the bench, and of a shelf on the wall. */
export function ActFace({ what, when, contents, ring }: ActFaceProps) {
  return (
    <span class="act-face">
      <Ring {...ring} size="var(--act-ring-size, 2em)" />
      <span class="act-words">
        <span class="act-line">
          <strong>{what}</strong>
          {when !== undefined && ` ${when}`}
        </span>
        {contents !== undefined && <span class="act-contents">{contents}</span>}
      </span>
    </span>
  )
}

export interface ActRowProps extends ActFaceProps {
  /** `act` turns the row inside out, `late` also stripes it. */
  readonly state: 'plain' | 'act' | 'late'
}

/** An act on the wall: nothing to press, the same face. */
export function ActRow({ state, ...face }: ActRowProps) {
  return (
    <div class={`act-row act-row-${state}`} data-block={state === 'plain' ? undefined : state}>
      <ActFace {...face} />
    </div>
  )
}
