import type { Act } from '../../shared-core/day/commands.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { DoughId, StationId } from '../../shared-core/ids.ts'
import type { LineActDue } from '../../shared-core/line/act-due.ts'
import { nextActs } from '../../shared-core/line/acts.ts'
import type { BoardsNow } from '../../shared-core/line/boards.ts'
import { boardsNow } from '../../shared-core/line/boards.ts'
import { newToKettle } from '../../shared-core/line/contacts.ts'
import { kettleNow } from '../../shared-core/line/kettle.ts'
import type { Standing } from '../../shared-core/line/quiet.ts'
import { standingNow } from '../../shared-core/line/quiet.ts'
import { tappedActs } from '../../shared-core/line/stations.ts'
import type { Plan } from '../../shared-core/live/plan.ts'
import type { LineAct, Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { BenchWords, StationWords } from '../words/bench.ts'
import type { FreePieces } from './free-pieces.ts'
import { freeView } from './free-pieces.ts'
import type { KettleView } from './kettle-face.ts'
import { becoming, kettleView, nameOf } from './kettle-face.ts'

/** The line left of the oven: what stands on rack and in the cooler, the kettle, the boards, and the keys among them. */
export interface LineView {
  readonly standing: readonly StandingView[]
  readonly kettle: KettleView
  readonly boards: BoardsView
  /** Null where the shop's stations do not tap it: then it is reached through "More". */
  readonly pull: StationKey | null
  readonly kettleKey: StationKey | null
  readonly boardKey: StationKey | null
}

export interface StandingView {
  readonly id: string
  /** "Plain 96" */
  readonly title: string
  /** Where it stands, and its window. */
  readonly detail: string
  readonly isOver: boolean
}

export interface BoardsView extends BoardsNow {
  /** Of the boards that there are. */
  readonly drawn: { readonly free: number; readonly out: number; readonly drying: number }
  readonly title: string
  /** "" when there is nothing to add. */
  readonly detail: string
}

/** One key for one station's next act. */
export interface StationKey {
  readonly which: 'pull' | 'kettle' | 'board'
  readonly tone: 'plain' | 'act' | 'late'
  /** "Pull 3 trays" */
  readonly what: string
  /** "in 8 min"; "" when nothing says when. */
  readonly when: string
  /** Of what, each by itself: the key shows as many as fit. */
  readonly contents: readonly string[]
  /** Of the act that is called for, see `LineActDue`; null when none is. */
  readonly dueKey: string | null
  /** What a touch does; null: nothing is planned, so that a touch asks what. */
  readonly act: Act | null
}

export interface LineParts {
  readonly state: State
  /** Null: loads are not advised. */
  readonly plan: Plan | null
  readonly shop: Shop
  readonly nowMs: EpochMs
  readonly words: BenchWords
  /** The station whose acts this screen taps; null: all that somebody taps. */
  readonly stationId: StationId | null
  /** What pieces without a name had best become; null: nothing is short, or nobody knows. */
  readonly free: FreePieces | null
}

export function lineView(parts: LineParts): LineView {
  const { state, shop, nowMs, words } = parts
  const acts = nextActs(state, nowMs)
  const tapped = tappedHere(shop, parts.stationId)
  const standing = standingNow(state, nowMs)
    .flatMap(beforeKettle)
    .sort(rackFirst)
    .map((one) => standingView(one, words))
  return {
    // Before what stands there: it is said of these pieces.
    standing: [...freeView(parts.free, nowMs, words), ...standing],
    kettle: kettleView(parts),
    boards: boardsView(boardsNow(state, nowMs), words),
    pull: tapped.has('pull') ? pullKey(first(acts, 'pull'), parts) : null,
    kettleKey: tapped.has('dip') || tapped.has('lift') ? kettleKey(acts, tapped, parts) : null,
    boardKey: tapped.has('board') ? boardKey(first(acts, 'board'), parts) : null,
  }
}

/** The acts that stand large on this screen. */
export function tappedHere(shop: Shop, stationId: StationId | null): ReadonlySet<LineAct> {
  const station = stationId === null ? undefined : shop.stations.get(stationId)
  return station === undefined ? tappedActs(shop) : new Set(station.acts)
}

type BeforeKettle = Standing & { readonly stage: Exclude<Standing['stage'], 'cool'> }

function beforeKettle(one: Standing): readonly BeforeKettle[] {
  return one.stage === 'cool' ? [] : [{ ...one, stage: one.stage }]
}

const NEAREST: readonly BeforeKettle['stage'][] = ['rack', 'chill', 'proof']

function rackFirst(one: BeforeKettle, other: BeforeKettle): number {
  return NEAREST.indexOf(one.stage) - NEAREST.indexOf(other.stage)
}

function standingView(one: BeforeKettle, { bench, line }: BenchWords): StandingView {
  const { station } = bench
  const window = windowText(one, station)
  return {
    id: `${one.stage} ${one.doughId}`,
    title: station.amount(one.doughName, one.pieces),
    detail: one.stage === 'rack' ? window : `${line.stage(one.stage)}, ${window}`,
    isOver: one.status === 'over',
  }
}

function windowText({ stage, status, opensAtMs, closesAtMs }: BeforeKettle, station: StationWords): string {
  if (status === 'over' && closesAtMs !== null) return station.past(closesAtMs)
  if (status === 'waiting' && opensAtMs !== null) return station.notReady(opensAtMs)
  return stage === 'rack' && closesAtMs !== null ? station.boilBy(closesAtMs) : station.ready
}

function boardsView(boards: BoardsNow, { bench }: BenchWords): BoardsView {
  const { station } = bench
  const detail =
    boards.over > 0 ? station.boardsOver(boards.over) : boards.drying > 0 ? station.boardsWetting(boards.drying) : ''
  return { ...boards, ...drawnBoards(boards), title: station.boardsNow(boards.free, boards.out), detail }
}

/** More than there are cannot be drawn: those under loads stand first, and the words say how many are short. */
function drawnBoards({ count, free, out, drying }: BoardsNow): Pick<BoardsView, 'drawn'> {
  const drawnOut = Math.min(out, count)
  const drawnDrying = Math.min(drying, count - drawnOut)
  return { drawn: { out: drawnOut, drying: drawnDrying, free: Math.min(free, count - drawnOut - drawnDrying) } }
}

function first(acts: readonly LineActDue[], act: LineAct): LineActDue | null {
  return acts.find((one) => one.act === act) ?? null
}

function pullKey(due: LineActDue | null, { words, nowMs }: LineParts): StationKey {
  if (due === null || due.doughId === null) return nothingKey('pull', words)
  const { doughId, varietyId, pieces, trays } = due
  return {
    which: 'pull',
    tone: toneOf(due),
    what: words.acts.name({ act: 'pull', doughId, varietyId, trays }),
    when: words.times.when(due, nowMs),
    contents: [],
    dueKey: due.key,
    act: { type: 'pull', doughId, varietyId, pieces },
  }
}

function kettleKey(acts: readonly LineActDue[], tapped: ReadonlySet<LineAct>, parts: LineParts): StationKey {
  const { words, nowMs, state } = parts
  const lift = first(acts, 'lift')
  if (tapped.has('lift') && lift !== null && lift.batchId !== null) {
    return {
      which: 'kettle',
      tone: toneOf(lift),
      what: words.acts.name({ act: 'lift' }),
      when: words.times.when(lift, nowMs),
      contents: kettleContents(parts),
      dueKey: lift.key,
      act: { type: 'lift', batchId: lift.batchId },
    }
  }
  const next = first(acts, 'dip') ?? null
  const planned = kettleNow(state, nowMs).next
  const doughId = next?.doughId ?? planned?.doughId ?? null
  if (doughId === null) return nothingKey('kettle', words)
  const varietyId = next?.varietyId ?? planned?.varietyId ?? null
  const pieces = next?.pieces ?? planned?.pieces ?? 0
  return {
    which: 'kettle',
    tone: next === null ? 'plain' : toneOf(next),
    what: words.acts.name({ act: 'dip', doughId, varietyId, pieces }),
    when: next === null ? '' : words.times.when(next, nowMs),
    contents: [
      ...brings(state, doughId, words),
      ...becoming(next?.lines ?? planned?.becomes ?? [], words),
      ...(planned === null || planned.dipsLeft < 2 ? [] : [words.advice.dips(planned.dipsLeft)]),
    ],
    dueKey: next?.key ?? null,
    act: { type: 'dip', doughId, varietyId, pieces },
  }
}

/** Allergens that a dip brings to the water, as far as that is known: said before what its pieces become. */
function brings(state: State, doughId: DoughId, { shift }: BenchWords): readonly string[] {
  const allergens = newToKettle(state, doughId)
  return allergens.length === 0 ? [] : [shift.care.brings(allergens)]
}

function boardKey(due: LineActDue | null, { words }: LineParts): StationKey {
  if (due === null) return nothingKey('board', words)
  const lines = due.lines
  return {
    which: 'board',
    tone: toneOf(due),
    what: words.acts.name({ act: 'board' }),
    when: '',
    contents: lines.length === 0 ? [words.bench.shelf.chooseWhat] : lines.map((line) => words.line.contents([line])),
    dueKey: due.key,
    act: lines.length === 0 ? null : { type: 'board', lines },
  }
}

function nothingKey(which: StationKey['which'], { acts, bench }: BenchWords): StationKey {
  const act = which === 'kettle' ? 'dip' : which
  const contents = [bench.station.nothingPlanned]
  return { which, tone: 'plain', what: acts.name({ act }), when: '', contents, dueKey: null, act: null }
}

/** What is in the kettle, then what it becomes. */
function kettleContents({ state, nowMs, words }: LineParts): readonly string[] {
  return kettleNow(state, nowMs).in.flatMap((one) => [
    words.bench.station.amount(nameOf(one, words), one.pieces),
    ...becoming(one.becomes, words),
  ])
}

function toneOf({ status }: LineActDue): StationKey['tone'] {
  return status === 'coming' ? 'plain' : status === 'due' ? 'act' : 'late'
}
