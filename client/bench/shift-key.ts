import type { ChangeoverNow } from '../../shared-core/day/changeover.ts'
import { changeoverNow } from '../../shared-core/day/changeover.ts'
import { changeoverList } from '../../shared-core/day/changeover-list.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import { notesOnWall } from '../../shared-core/day/notes.ts'
import { openingList } from '../../shared-core/day/opening-list.ts'
import type { Ruler } from '../../shared-core/day/ruler.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { StepList } from '../../shared-core/day/step-list.ts'
import type { MixStage } from '../../shared-core/dough/mix.ts'
import type { RoomAct } from '../../shared-core/dough/room-acts.ts'
import type { KitchenActDue } from '../../shared-core/kitchen/kitchen-acts.ts'
import { kettleCare } from '../../shared-core/line/kettle-care.ts'
import type { BatchStage } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { stepView } from '../parts/step-view.ts'
import type { BenchWords } from '../words/bench.ts'
import { roomWhen } from './room-when.ts'
import type { OpenSheet } from './sheets/open-sheet.ts'

/**
 * The one key at the bottom for what a shift needs besides the line: the kettle's care when it is due, which a touch
 * does; else the kitchen, the list of the opening or the changeover, the dough room, or notes, which a touch shows. One, as the line needs the room;
 * "More" has all of them at any time.
 */
export interface ShiftKeyView {
  readonly what: string
  readonly details: readonly string[]
  readonly tone: 'plain' | 'act' | 'late'
  /** What a touch does; null: it shows `sheet`. */
  readonly act: Act | null
  readonly sheet: OpenSheet
}

export interface ShiftKeyParts {
  readonly state: State
  readonly ruler: Ruler | null
  /** What the dough room calls for, soonest first. */
  readonly roomActs: readonly RoomAct[]
  /** What the kitchen calls for, soonest first. */
  readonly kitchenActs: readonly KitchenActDue[]
  readonly nowMs: EpochMs
  readonly words: BenchWords
}

/** So long before the changeover its list comes to the line. */
export const CHANGEOVER_AHEAD_MS = 60 * 60_000

export function shiftKeyView(parts: ShiftKeyParts): ShiftKeyView | null {
  return (
    careKey(parts) ??
    kitchenKey(parts) ??
    openingKey(parts) ??
    changeoverKey(parts) ??
    doughRoomKey(parts) ??
    notesKey(parts)
  )
}

function careKey({ state, nowMs, words }: ShiftKeyParts): ShiftKeyView | null {
  const { reminders, boilsAgainAtMs } = kettleCare(state, nowMs)
  const { care } = words.shift
  const sheet = { kind: 'kettle' } as const
  if (boilsAgainAtMs !== null) {
    const details = [care.boilsIn(boilsAgainAtMs, nowMs)]
    return { what: care.care('boiling'), details, tone: 'plain', act: { type: 'care', care: 'boiling' }, sheet }
  }
  const due = reminders.find(({ isDue }) => isDue)
  if (due === undefined || state.day === null) return null
  const details = [care.boiled(due.boiled, due.atMs)]
  return { what: care.care(due.care), details, tone: 'act', act: { type: 'care', care: due.care }, sheet }
}

/** So long before it something of the kitchen comes to the line. */
const KITCHEN_AHEAD_MS = 5 * 60_000

/** While something is to be made to order, or will be within minutes: guests wait for it, lists do not. */
function kitchenKey({ nowMs, kitchenActs, words }: ShiftKeyParts): ShiftKeyView | null {
  const near = kitchenActs.filter(({ atMs }) => atMs - nowMs <= KITCHEN_AHEAD_MS)
  const [next] = near
  if (next === undefined) return null
  const tone = near.some(({ status }) => status === 'late') ? 'late' : next.status === 'coming' ? 'plain' : 'act'
  const details = [words.times.when(next, nowMs)]
  return { what: words.bench.more.kitchen, details, tone, act: null, sheet: { kind: 'kitchen' } }
}

function openingKey(parts: ShiftKeyParts): ShiftKeyView | null {
  const list = openingList(parts.state, parts.nowMs, parts.ruler)
  if (list === null) return null
  return listKey(list, parts.words.shift.steps.opening, { kind: 'opening' }, parts)
}

function changeoverKey(parts: ShiftKeyParts): ShiftKeyView | null {
  const { state, nowMs, ruler, words } = parts
  const change = changeoverNow(state, nowMs, ruler)
  if (change === null || !isChangeoverNear(change, nowMs)) return null
  const { steps, change: say } = words.shift
  const sheet = { kind: 'changeover' } as const
  const list = changeoverList(state, nowMs, ruler)
  if (list !== null && list.doneCount < list.lines.length) return listKey(list, steps.changeover, sheet, parts)
  const details = [say.when(change.fromMs, change.toMs, nowMs)]
  return { what: steps.changeover, details, tone: 'plain', act: null, sheet }
}

/** From an hour before it until the second menu bakes. */
export function isChangeoverNear({ fromMs, toMs }: Pick<ChangeoverNow, 'fromMs' | 'toMs'>, nowMs: EpochMs): boolean {
  return nowMs >= fromMs - CHANGEOVER_AHEAD_MS && nowMs < Math.max(toMs, fromMs + 1)
}

/** The next step that is not done; how many are, the list itself says. */
function listKey(list: StepList, what: string, sheet: OpenSheet, { nowMs, words }: ShiftKeyParts): ShiftKeyView {
  const { steps } = words.shift
  const next = list.lines.find(({ status }) => status !== 'done')
  if (next === undefined) return { what, details: [steps.allDone], tone: 'plain', act: null, sheet }
  const view = stepView(next, { words, shift: words.shift, nowMs })
  const details = [`${view.name} ${view.whenShort}`]
  return { what, details, tone: view.tone === 'done' ? 'plain' : view.tone, act: null, sheet }
}

/** So long before it something of the dough room comes to the line. */
const ROOM_AHEAD_MS = 60 * 60_000

/** While something is mixed, or soon to be done there. */
function doughRoomKey({ state, nowMs, roomActs, words }: ShiftKeyParts): ShiftKeyView | null {
  const [next] = roomActs
  const isNear = next !== undefined && next.atMs - nowMs <= ROOM_AHEAD_MS
  if (!isNear && !isMixing(state)) return null
  const tone = next === undefined || next.status === 'coming' ? 'plain' : next.status === 'due' ? 'act' : 'late'
  const details = next === undefined ? [] : [roomWhen(next, nowMs, words.times)]
  return { what: words.bench.more.doughRoom, details, tone, act: null, sheet: { kind: 'dough-room' } }
}

const UNDER_WAY: ReadonlySet<MixStage> = new Set<MixStage>(['mixing', 'rest', 'bulk', 'bench'])

function isMixing(state: State): boolean {
  return [...state.mixes.values()].some(({ stage }) => UNDER_WAY.has(stage))
}

/** Nothing is on the line between rack and oven, and somebody is mixing: then a tablet that is opened shows the dough room. */
export function isDoughRoomTime(state: State): boolean {
  const isQuiet = state.loads.size === 0 && [...state.batches.values()].every(({ stage }) => AWAY.has(stage))
  return isQuiet && isMixing(state)
}

const AWAY: ReadonlySet<BatchStage> = new Set<BatchStage>(['proof', 'chill'])

function notesKey({ state, nowMs, ruler, words }: ShiftKeyParts): ShiftKeyView | null {
  const notes = notesOnWall(state, nowMs, ruler)
  if (notes.length === 0) return null
  const texts = notes.map(({ text }) => text)
  return { what: words.notes.title, details: texts, tone: 'plain', act: null, sheet: { kind: 'notes' } }
}
