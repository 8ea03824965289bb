import { NO_KETTLE_CARE } from '../shop/default-rules.ts'
import { assert } from '../support.ts'
import type { Entry, Event, EventType } from './events.ts'

/** Types whose form has changed, with their newest version; all others are at 1. */
const NEWEST: { readonly [Type in EventType]?: number } = {
  /** Parts of a set-up say what they contain, how the kettle is cared for and what the oven bakes at. */
  setUpChanged: 2,
  /** The shop's noon, from which its hours are counted. */
  dayOpened: 2,
  /** The crew's time. */
  dayClosed: 2,
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
  'setUpChanged 1': (event) => ({ ...event, v: 2, changes: (event.changes as RawChange[]).map(fullChange) }),
  'dayOpened 1': (event) => ({ ...event, v: 2, noonMs: null }),
  'dayClosed 1': (event) => ({ ...event, v: 2, crewMinutes: null }),
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
  readonly value: object
}

const NEW_FIELDS: { readonly [entity: string]: object } = {
  kettle: NO_KETTLE_CARE,
  oven: { bakeAt: null, secondAt: null },
  dough: { contains: [] },
  variety: { toppingId: null },
}

function fullChange({ entity, value }: RawChange): RawChange {
  return { entity, value: { ...NEW_FIELDS[entity], ...value } }
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
