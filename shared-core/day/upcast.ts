import { assert } from '../support.ts'
import type { Entry } from './events.ts'

/**
 * Brings an entry of the journal to today's form. Each event type has a version `v`; when its form changes, its number
 * goes up and a pure function here turns the old form into the new one. A golden journal of each release is replayed
 * in tests.
 */
const UPCASTERS: { readonly [typeAndVersion: string]: (event: RawEvent) => RawEvent } = {}
const NEWEST_VERSION = 1

interface RawEvent {
  readonly type: string
  readonly v: number
}

/** @throws AssertionError for an event of a version that this release does not know: a newer one wrote the journal. */
export function upcastEntry(entry: Entry): Entry {
  for (const event of entry.events) {
    if (event.v !== NEWEST_VERSION) return { ...entry, events: entry.events.map(upcastEvent) }
  }
  return entry
}

function upcastEvent(event: RawEvent): Entry['events'][number] {
  let current = event
  while (current.v !== NEWEST_VERSION) {
    const step = UPCASTERS[`${current.type} ${current.v}`]
    assert(
      step !== undefined,
      `no way to read ${current.type} version ${current.v}: a newer release wrote this journal`,
    )
    current = step(current)
  }
  return current as Entry['events'][number]
}
