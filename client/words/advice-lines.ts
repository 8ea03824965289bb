import type { Line } from '../../shared-core/day/state.ts'
import type { Words } from './words.ts'

/** More would not be read in passing. */
const LINES_MOST = 3

/** What of a load is another, the most pieces first. @example "+12 Plain, −6 Poppy, …" */
export function otherLines(
  { more, fewer }: { readonly more: readonly Line[]; readonly fewer: readonly Line[] },
  { names }: Words,
): string {
  const most = (lines: readonly Line[], sign: string) =>
    lines.map(({ varietyId, pieces }) => ({ pieces, text: `${sign}${pieces} ${names.variety(varietyId)}` }))
  const all = [...most(more, '+'), ...most(fewer, '−')].sort((one, other) => other.pieces - one.pieces)
  const said = all.slice(0, LINES_MOST).map(({ text }) => text)
  return [...said, ...(all.length > LINES_MOST ? ['…'] : [])].join(', ')
}
