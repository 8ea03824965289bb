import type { ChangeoverNow } from '../../../shared-core/day/changeover.ts'
import type { Slipped } from '../../../shared-core/day/slip.ts'

/** The step by which a changeover is slipped: what people call a quarter of an hour. */
export const SLIP_MS = 15 * 60_000

export interface Slip {
  readonly byMs: number
  readonly moved: Slipped
}

/** What a quarter of an hour later and earlier would move, later first: that is what is asked for. */
export function slips({ slipped }: Pick<ChangeoverNow, 'slipped'>): readonly Slip[] {
  return [SLIP_MS, -SLIP_MS].map((byMs) => ({ byMs, moved: slipped(byMs) }))
}
