import { DEFAULT_MIXER, NO_FORMULA, NO_KETTLE_CARE } from '../shop/default-rules.ts'
import { assert } from '../support.ts'
import type { Entry, Event, EventType } from './events.ts'

/** Types whose form has changed, with their newest version; all others are at 1. */
const NEWEST: { readonly [Type in EventType]?: number } = {
  /** 2: what parts contain, how the kettle is cared for, what the oven bakes at. 3: what doughs are made of, the mixer. 4: what a piece of a
   * variety brings in the kitchen, its usual pieces. 5: how loads are planned. 6: the second menu's places. */
  setUpChanged: 6,
  setUpPlanned: 5,
  /** The shop's noon, from which its hours are counted. */
  dayOpened: 2,
  /** 2: the crew's time. 3: what goes of the dough room. */
  dayClosed: 3,
  /** Where a sale comes from, and whether its variety was said. */
  stockTaken: 2,
  /** How exact a count is, and what it teaches. */
  counted: 2,
}

/** The version that a new event is written in. */
export function eventVersion(type: EventType): number {
  return NEWEST[type] ?? 1
}

/**
 * Brings an entry of the journal to today's form. Each event type has a version `v`; when its form changes, its number
 * goes up and a pure function here turns the old form into the new one. A golden journal of each release is replayed
 * in tests.
 */
const UPCASTERS: { readonly [typeAndVersion: string]: (event: RawEvent) => RawEvent } = {
  'setUpChanged 1': (event) => ({ ...event, v: 2 }),
  'setUpChanged 2': (event) => ({ ...event, v: 3, changes: (event.changes as RawChange[]).map(fullChange) }),
  'setUpChanged 3': (event) => ({ ...event, v: 4, changes: (event.changes as RawChange[]).map(fullChange) }),
  'setUpChanged 4': (event) => ({ ...event, v: 5, changes: (event.changes as RawChange[]).map(fullChange) }),
  'setUpChanged 5': (event) => ({ ...event, v: 6, changes: (event.changes as RawChange[]).map(fullChange) }),
  'setUpPlanned 1': (event) => ({ ...event, v: 2, setUp: fullPlanned(event.setUp as RawPlanned) }),
  'setUpPlanned 2': (event) => ({ ...event, v: 3, setUp: fullPlanned(event.setUp as RawPlanned) }),
  'setUpPlanned 3': (event) => ({ ...event, v: 4, setUp: fullPlanned(event.setUp as RawPlanned) }),
  'setUpPlanned 4': (event) => ({ ...event, v: 5, setUp: fullPlanned(event.setUp as RawPlanned) }),
  'dayOpened 1': (event) => ({ ...event, v: 2, noonMs: null }),
  'dayClosed 1': (event) => ({ ...event, v: 2, crewMinutes: null }),
  'dayClosed 2': (event) => ({ ...event, v: 3, mixIds: [], buildIds: [], onHand: [] }),
  'stockTaken 1': (event) => ({ ...event, v: 2, unnamed: false, from: 'tap' }),
  'counted 1': (event) => ({ ...event, v: 2, within: 0, habit: null }),
}

interface RawEvent {
  readonly type: EventType
  readonly v: number
  readonly [field: string]: unknown
}

interface RawChange {
  readonly entity: string
  readonly value: object | null
}

interface RawPlanned {
  readonly changes: RawChange[]
}

const NEW_FIELDS: { readonly [entity: string]: object } = {
  kettle: NO_KETTLE_CARE,
  oven: { bakeAt: null, secondAt: null },
  mixer: { name: DEFAULT_MIXER.name, washMs: DEFAULT_MIXER.washMs },
  shelf: { emptyByMinute: null, slots: 0 },
  dough: { contains: [], ...NO_FORMULA },
  topping: { madeOf: [] },
  variety: { toppingId: null, kitchenCents: null, showLeast: 0, avoids: [], usual: null },
}

function fullChange({ entity, value }: RawChange): RawChange {
  return { entity, value: value === null ? null : { ...NEW_FIELDS[entity], ...value } }
}

function fullPlanned(setUp: RawPlanned): RawPlanned {
  return { ...setUp, changes: setUp.changes.map(fullChange) }
}

/** @throws AssertionError for an event of a version that this release does not know: a newer one wrote the journal. */
export function upcastEntry(entry: Entry): Entry {
  for (const { type, v } of entry.events)
    if (v !== eventVersion(type))
      return { ...entry, events: entry.events.map((event) => upcastEvent(event as unknown as RawEvent)) }
  return entry
}

function upcastEvent(event: RawEvent): Event {
  let current = event
  while (current.v !== eventVersion(current.type)) {
    const step = UPCASTERS[`${current.type} ${current.v}`]
    assert(
      step !== undefined,
      `no way to read ${current.type} version ${current.v}: a newer release wrote this journal`,
    )
    current = step(current)
  }
  return current as unknown as Event
}
