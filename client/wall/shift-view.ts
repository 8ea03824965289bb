import type { ChangeoverNow } from '../../shared-core/day/changeover.ts'
import { changeoverNow } from '../../shared-core/day/changeover.ts'
import { changeoverList } from '../../shared-core/day/changeover-list.ts'
import { notesOnWall, notesWaiting } from '../../shared-core/day/notes.ts'
import { openingList } from '../../shared-core/day/opening-list.ts'
import type { Ruler } from '../../shared-core/day/ruler.ts'
import type { Note } from '../../shared-core/day/said.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { StepList } from '../../shared-core/day/step-list.ts'
import type { DoughId } from '../../shared-core/ids.ts'
import { newToKettle } from '../../shared-core/line/contacts.ts'
import { kettleCare } from '../../shared-core/line/kettle-care.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { ShiftWords } from '../words/shift.ts'
import type { LineRoom } from './text-lines.ts'
import { widthOf } from './text-lines.ts'

/** What the ends of a shift put on the wall, before it is known how much room there is. */
export interface ShiftNow {
  readonly opening: StepList | null
  /** From an hour before the changeover until the second menu bakes; null at other times. */
  readonly change: ChangeoverNow | null
  readonly changeList: StepList | null
  /** No more bagels today: what is left is for the afternoon. */
  readonly afternoon: ChangeoverNow | null
  /** To be read now. */
  readonly notes: readonly Note[]
  /** How many wait, read or not. */
  readonly waiting: number
}

/** So long before the changeover the wall speaks of it. */
const CHANGEOVER_AHEAD_MS = 60 * 60_000

export function shiftNow(state: State, nowMs: EpochMs, ruler: Ruler | null): ShiftNow {
  const change = changeoverNow(state, nowMs, ruler)
  const isNear = change !== null && nowMs >= change.fromMs - CHANGEOVER_AHEAD_MS && nowMs < change.toMs
  const list = isNear ? changeoverList(state, nowMs, ruler) : null
  return {
    opening: openingList(state, nowMs, ruler),
    change: isNear ? change : null,
    changeList: list !== null && list.doneCount < list.lines.length ? list : null,
    afternoon: change?.isOver === true ? change : null,
    notes: notesOnWall(state, nowMs, ruler),
    waiting: notesWaiting(state).length,
  }
}

export interface ChangeSetting {
  /** What the last loads should carry more of, from all of it to the shortest; none where nothing is to be said. */
  readonly more?: readonly string[]
  readonly shift: ShiftWords
  readonly nowMs: EpochMs
  readonly room: LineRoom
}

const TURNS = ['bagels', 'emptying', 'over'] as const

/**
 * The changeover in one line: when it is, what the last loads should carry more of, what is to do next, the oven shelf by
 * shelf, when it is empty, its heat. Where not all fit, heat and the empty oven give way; where shelves do not fit by name, they are counted.
 * @param next "" where there is nothing, or where the list itself is on the wall
 */
export function changeText(
  change: ChangeoverNow,
  next: string,
  { shift, nowMs, room, more = [] }: ChangeSetting,
): string {
  const { change: say } = shift
  const { reading, shelves } = change
  const when = say.when(change.fromMs, change.toMs, nowMs)
  const named = shelves.map(({ name, state, freeAtMs }) => say.shelf(name, state, freeAtMs))
  const untimed = shelves.map(({ name, state }) => say.shelf(name, state, null))
  const counted = TURNS.flatMap((turn) => {
    const count = shelves.filter(({ state }) => state === turn).length
    return count === 0 ? [] : [say.several(count, turn)]
  })
  const empty = say.ovenEmpty(change.ovenEmptyAtMs)
  const heat = reading === null ? [] : [say.reading(reading.degrees, reading.unit, reading.atMs)]
  const ways = [...more, ''].flatMap((wanted) => {
    const lead = [when, wanted].filter((text) => text !== '')
    const first = [...lead, next].filter((text) => text !== '')
    return [
      [...first, ...named, empty, ...heat],
      [...first, ...named, empty],
      [...first, ...named],
      [...lead, ...named],
      [...first, ...untimed],
      [...lead, ...untimed],
      [...first, ...counted, empty],
      [...first, ...counted],
      [...lead, ...counted],
      first,
      lead,
    ]
  })
  const texts = ways.map((way) => way.join(SEPARATOR))
  return texts.find((text) => widthOf(text, room.fontPx, room.weight) <= room.roomPx) ?? when
}

const SEPARATOR = ' · '

export interface CareSetting {
  readonly shift: ShiftWords
  /** What is dipped next; null when that is not known. */
  readonly nextDoughId: DoughId | null
  readonly room: LineRoom
}

/** Allergens that the next dip brings to the water, as far as that is known. */
function bringsTexts(state: State, doughId: DoughId | null, { care }: ShiftWords): readonly string[] {
  const allergens = doughId === null ? [] : newToKettle(state, doughId)
  return allergens.length === 0 ? [] : [care.brings(allergens)]
}

/** What the kettle's water needs, else what the next dip brings to it, beside its heading; "" while it needs nothing. */
export function careText(state: State, nowMs: EpochMs, { shift, nextDoughId, room }: CareSetting): string {
  const { care } = shift
  const { reminders, boilsAgainAtMs } = kettleCare(state, nowMs)
  const due = reminders.find(({ isDue }) => isDue)
  const texts =
    boilsAgainAtMs !== null
      ? [care.boilsIn(boilsAgainAtMs, nowMs)]
      : due === undefined || state.day === null
        ? bringsTexts(state, nextDoughId, shift)
        : [
            care.reminder(due.care, due.boiled, due.atMs),
            care.reminder(due.care, due.boiled, null),
            care.care(due.care),
          ]
  return texts.find((text) => widthOf(text, room.fontPx, room.weight) <= room.roomPx) ?? ''
}
