import { Ring } from './ring.tsx'

export interface ActBarProps {
  /** The next act, verb first: "Lift". Null: nothing is due. */
  readonly act: { readonly what: string; readonly when: string; readonly isLate: boolean } | null
  /** What follows, soonest first, each a whole phrase: "then flip 2", "then pull 3 trays plain". */
  readonly then: readonly string[]
  /** The words for when nothing is due. */
  readonly nothing: string
}

/**
 * The next act in one bar across the room, paper-white. What follows is shown as far as it fits: a phrase that does not
 * is left out whole, never cut.
 */
export function ActBar({ act, then, nothing }: ActBarProps) {
  const state = act === null ? 'none' : act.isLate ? 'late' : 'act'
  return (
    <div class={`act-bar act-bar-${state}`} data-block={state === 'none' ? undefined : state}>
      <div class="act-bar-mark">
        <Ring fraction={0} state={state === 'none' ? 'idle' : state} size="0.9em" />
      </div>
      <div class="act-bar-next">{act === null ? nothing : `${act.what} ${act.when}`}</div>
      <div class="act-bar-then">
        {then.map((phrase, index) => (
          // The comma goes with what it leads to, so that none is left hanging.
          <span key={phrase}>{index > 0 ? `, ${phrase}` : phrase}</span>
        ))}
      </div>
    </div>
  )
}
