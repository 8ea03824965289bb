import type { State } from '../../shared-core/day/state.ts'
import type { LoadId, ShelfId } from '../../shared-core/ids.ts'
import { loadId } from '../../shared-core/ids.ts'
import { slotsNow } from '../../shared-core/kitchen/slots-now.ts'
import type { ShelfKey } from '../../shared-core/line/shelf-keys.ts'
import { shelfKeys } from '../../shared-core/line/shelf-keys.ts'
import { isShelfOver } from '../../shared-core/line/shelf-over.ts'
import type { Plan } from '../../shared-core/live/plan.ts'
import { isAdvised } from '../../shared-core/live/plan.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { PendingCommand } from '../live/shop-store.ts'
import { mainWhy, planLoad } from '../parts/advice.ts'
import type { RingState } from '../parts/ring.tsx'
import type { BenchWords } from '../words/bench.ts'

/** One shelf's key, ready to be painted: load, then flip, then out. */
export interface ShelfView {
  /** The same as long as it is the same place on the glass. */
  readonly id: string
  readonly key: ShelfKey
  readonly tone: 'plain' | 'act' | 'late'
  readonly ring: { readonly fraction: number; readonly state: RingState }
  /** "Flip 2" */
  readonly what: string
  /** "in 40 s", "now", "3 min late"; "" when nothing says when. */
  readonly when: string
  /** "Sesame 36", each variety by itself: the key shows as many as fit. */
  readonly contents: readonly string[]
  /** What else one must know of it, most important first: unconfirmed, too full, at the door, topping to come. */
  readonly notes: readonly string[]
  /** All of it in one sentence, for those who listen. */
  readonly name: string
  /** Tapped here, not yet confirmed by the shop. */
  readonly unconfirmed: boolean
  /** It calls for a load that is advised and that nobody has set. */
  readonly isAdvised: boolean
}

export interface ShelfParts {
  readonly state: State
  /** Null: loads are not advised. */
  readonly plan: Plan | null
  readonly nowMs: EpochMs
  readonly words: BenchWords
  /** Loads, and shelves without one, on which a tap of this device waits for the shop's answer. */
  readonly unconfirmed: ReadonlySet<LoadId | ShelfId>
}

/**
 * The keys of the oven in the set-up's order. Those of a rotating oven too: keys that moved along with the shelves would
 * move under the finger, so that two quick touches at one place loaded two shelves; the door is a mark that moves.
 */
export function shelfViews({ state, plan, nowMs, words, unconfirmed }: ShelfParts): readonly ShelfView[] {
  return shelfKeys(state, nowMs).map((key) =>
    shelfView(key, { state, plan, nowMs, words, unconfirmed: unconfirmed.has(key.loadId ?? key.shelfId) }),
  )
}

/**
 * What own unanswered taps act on: loads, and shelves whose load has gone. A tap a moment ago is not worth a word while
 * there is contact.
 */
export function unconfirmedPlaces(
  state: State,
  pending: readonly PendingCommand[],
  now: { readonly nowMs: EpochMs; readonly isLinked: boolean },
): ReadonlySet<LoadId | ShelfId> {
  const waiting = pending.filter(
    ({ command }) => !now.isLinked || now.nowMs - (command.tappedAtMs ?? 0) > UNANSWERED_MS,
  )
  const ids = new Set(waiting.map(({ command }) => command.id))
  const places = new Set<LoadId | ShelfId>()
  for (const { commandId, told, touched } of state.traces) {
    if (!ids.has(commandId)) continue
    const loads = touched.flatMap(({ table, id }) => (table === 'loads' ? [loadId(id)] : []))
    const gone = loads.filter((id) => !state.loads.has(id))
    for (const id of loads) places.add(id)
    if (gone.length > 0 && told.shelfId !== undefined) places.add(told.shelfId)
  }
  return places
}

/** Answers come within a fraction of this; a mark that flashes at every tap would be noise. */
const UNANSWERED_MS = 2_000

interface Said {
  readonly state: State
  readonly plan: Plan | null
  readonly nowMs: EpochMs
  readonly words: BenchWords
  readonly unconfirmed: boolean
}

function shelfView(key: ShelfKey, said: Said): ShelfView {
  const { words, nowMs, unconfirmed } = said
  const held = key.lines.map((line) => words.line.contents([line]))
  const [first, ...others] = held
  // A hearth's loads share one floor: what is in them tells them apart.
  const isNamed = key.loadId !== null && said.state.shop?.oven.kind === 'hearth' && first !== undefined
  const what = isNamed
    ? words.bench.shelf.ofLoad(words.acts.verb(key.act), first)
    : words.acts.name({ act: key.act, shelfId: key.shelfId })
  const when = key.atMs === null ? '' : words.times.when({ atMs: key.atMs, status: key.status }, nowMs)
  const contents = isNamed ? others : held
  const advice = adviceNotes(key, said)
  const { urgent, last } = notesOf(key, said)
  const act = [what, when].filter((text) => text !== '').join(' ')
  const nothing = held.length === 0 ? [emptyText(key, said)] : []
  return {
    id: key.loadId ?? `load ${key.shelfId}`,
    key,
    tone: key.status === 'coming' ? 'plain' : key.status === 'due' ? 'act' : 'late',
    ring: ringOf(key, nowMs),
    what,
    when,
    contents: [...contents, ...nothing],
    notes: [...urgent, ...advice.shown, ...last],
    name: [act, ...contents, ...nothing, ...urgent, ...advice.spoken, ...last].join(', '),
    unconfirmed,
    isAdvised: key.act === 'load' && isAdvised(key.plannedId),
  }
}

/** A shelf that is done with bagels may still be loaded, but asks for nothing: it says whose things bake there. */
function emptyText({ shelfId: id }: ShelfKey, { state, words, nowMs }: Said): string {
  if (id === null || !isShelfOver(state, id)) return words.bench.shelf.chooseWhat
  const marks = slotsNow(state, nowMs).flatMap(({ shelfId, mark }) => (shelfId === id ? [mark] : []))
  return marks.length === 0 ? words.shift.change.over : words.bench.shelf.bakesFor([...new Set(marks)])
}

interface Notes {
  /** What is wrong with it: said before all else. */
  readonly urgent: readonly string[]
  readonly last: readonly string[]
}

function notesOf(key: ShelfKey, said: Said): Notes {
  const { words, unconfirmed } = said
  const urgent: string[] = []
  if (unconfirmed) urgent.push(words.bench.shelf.unconfirmed)
  if (key.over) urgent.push(words.answers.over('shelf'))
  // Last: the key's frame says it too, where there is room for one note only.
  return { urgent, last: [...toppingNotes(key, said), ...(key.atDoor ? [words.bench.shelf.atDoor] : [])] }
}

/** Why a load is called for, and whose wish it is: shown as far as there is room, spoken once. */
function adviceNotes({ act, plannedId }: ShelfKey, { plan, words: { advice } }: Said) {
  const load = act === 'load' ? planLoad(plan, plannedId) : null
  if (load === null) return { shown: [], spoken: [] }
  const contacts = load.contacts.map((contact) => advice.contactShort(contact))
  const why = mainWhy(load)
  if (load.isPinned || why === null) {
    const whose = load.isPinned ? advice.set : advice.advised
    return { shown: [...contacts, whose], spoken: [...contacts, whose] }
  }
  const [whole, reason] = [`${advice.advised}: ${advice.whyShort(why)}`, advice.whyShort(why)]
  return { shown: [...contacts, whole, reason, advice.advised], spoken: [...contacts, whole] }
}

/** How long after a flip its topping is called for. */
const TOPPING_MS = 60_000

/** Told on the flip's key, called for after the flip, and then no news any more: nobody taps that it was done. */
function toppingNotes(key: ShelfKey, { state, nowMs, words }: Said): readonly string[] {
  const load = key.loadId === null ? undefined : state.loads.get(key.loadId)
  if (load === undefined || key.toppingAfterFlip.length === 0) return []
  const { shelf } = words.bench
  const varieties = key.toppingAfterFlip.map((id) => words.names.variety(id))
  // Where nobody taps flips, the flip is when it should be.
  const flippedAtMs = load.flippedAtMs ?? (key.act === 'flip' ? null : (load.flip?.targetAtMs ?? null))
  if (flippedAtMs === null || nowMs < flippedAtMs) return [shelf.toTop(varieties)]
  return nowMs < flippedAtMs + TOPPING_MS ? [shelf.topNow(varieties)] : []
}

function ringOf(key: ShelfKey, nowMs: EpochMs): ShelfView['ring'] {
  if (key.status === 'late') return { fraction: 0, state: 'late' }
  if (key.status === 'due') return { fraction: 0, state: 'act' }
  if (key.atMs === null || key.startedAtMs === null) return { fraction: 0, state: 'idle' }
  const wholeMs = key.atMs - key.startedAtMs
  return { fraction: wholeMs > 0 ? (key.atMs - nowMs) / wholeMs : 0, state: 'running' }
}
