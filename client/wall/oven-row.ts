import type { Load } from '../../shared-core/day/state.ts'
import type { LoadId } from '../../shared-core/ids.ts'
import type { ShelfKey } from '../../shared-core/line/shelf-keys.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { fitList } from '../parts/fit.ts'
import type { RingState } from '../parts/ring.tsx'
import type { WallWords } from '../words/wall.ts'
import type { Words } from '../words/words.ts'
import type { Naming } from './act-name.ts'
import { actName, firstOfLoad } from './act-name.ts'
import { fits, shortened, widthOf } from './text-lines.ts'

/** What a shelf's row says, before it is known how much room there is for it. */
export interface RowText {
  readonly key: string
  readonly state: 'plain' | 'act' | 'late'
  readonly what: string
  readonly when: string
  /** The time in fewer words, for a row that needs its second line for what is in it. */
  readonly whenShort: string
  readonly ring: { readonly fraction: number; readonly state: RingState }
  readonly lines: readonly string[]
  /** What is topped after the flip; "" when nothing is. It is an act: it is never counted into "2 more". */
  readonly note: string
}

export interface RowInput {
  readonly nowMs: EpochMs
  readonly loads: ReadonlyMap<LoadId, Load>
  readonly words: Words
  readonly wall: WallWords
  readonly naming: Naming
}

/** What is due within so long turns paper-white: time to dry the hands and get there. */
export const SOON_MS = 60_000
/** After the flip the topping is still said for so long; then it is on. */
const TOPPING_MS = 60_000

export function rowText(key: ShelfKey, input: RowInput): RowText {
  const { nowMs, words, wall } = input
  const { act, atMs, startedAtMs, status, shelfId, shelfName, loadId, plannedId } = key
  const id = loadId ?? `${shelfId} ${plannedId ?? 'free'}`
  const contents = key.lines.map(({ varietyId, pieces }) => `${words.names.variety(varietyId)} ${pieces}`)
  const when = atMs === null ? '' : words.times.when({ atMs, status }, nowMs)
  const name = actName({ act, shelfId, lines: key.lines }, words, input.naming)
  const isNamed = firstOfLoad(key, words, input.naming) !== null
  if (act === 'load' && (atMs === null || status === 'coming')) {
    const isFree = atMs === null && contents.length > 0
    const inside = isNamed ? contents.slice(1) : contents
    const lines = isFree ? [wall.nextOn(contents[0] ?? ''), ...contents.slice(1)] : inside
    const what = atMs === null ? wall.shelfFree(shelfName) : name
    const ring = { fraction: 0, state: 'idle' } as const
    return { key: id, state: isSoon(key, nowMs) ? 'act' : 'plain', what, when, whenShort: when, ring, lines, note: '' }
  }
  const state = status === 'late' ? 'late' : isSoon(key, nowMs) ? 'act' : 'plain'
  const left = atMs === null || startedAtMs === null ? 0 : (atMs - nowMs) / Math.max(1, atMs - startedAtMs)
  const ringState: RingState = state === 'plain' ? (atMs === null ? 'idle' : 'running') : state
  const ring = { fraction: Math.max(0, left), state: ringState }
  const what = status === 'late' ? `${name},` : name
  const whenShort = status === 'late' ? wall.late : when
  return {
    key: id,
    state,
    what,
    when,
    whenShort,
    ring,
    lines: isNamed ? contents.slice(1) : contents,
    note: toppingText(key, input),
  }
}

/** At the flip what is topped after it, and for a minute from the flip on that it is topped now. */
function toppingText({ act, loadId, toppingAfterFlip }: ShelfKey, { loads, nowMs, words, wall }: RowInput): string {
  if (loadId === null || toppingAfterFlip.length === 0) return ''
  const names = words.line.list(toppingAfterFlip.map((varietyId) => words.names.variety(varietyId)))
  if (act === 'flip') return wall.topAfter(names)
  const flippedAtMs = loads.get(loadId)?.flippedAtMs ?? null
  return flippedAtMs !== null && nowMs - flippedAtMs < TOPPING_MS ? wall.topNow(names) : ''
}

function isSoon({ atMs, latestAtMs, status }: ShelfKey, nowMs: EpochMs): boolean {
  if (atMs === null) return false
  return status === 'due' || (latestAtMs !== null && nowMs > latestAtMs) || atMs - nowMs <= SOON_MS
}

/** What is in a load and what is topped, in one line: where room is short, the topping stands first and stays. */
export function contentsText(
  { lines, note }: Pick<RowText, 'lines' | 'note'>,
  line: { readonly roomPx: number; readonly fontPx: number },
  more: WallWords['more'],
): string {
  if (note === '') return fitList(lines, line, more)
  const all = [...lines, note].join(', ')
  if (fits(all, line)) return all
  const lead = `${note}, `
  const rest = fitList(lines, { ...line, roomPx: line.roomPx - widthOf(lead, line.fontPx) }, more)
  // "mixing, 2 more" says nothing where none of what is meant stands there.
  const isNamed = rest !== '' && rest !== more(lines.length)
  return isNamed && fits(lead + rest, line) ? lead + rest : shortened(note, line)
}
