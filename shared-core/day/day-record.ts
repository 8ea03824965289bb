import type { Entry, Event, EventOf } from './events.ts'

/**
 * A business day in the journal: the entries from the one that opens it to its last close. One entry may close a
 * forgotten day and open the next: it is the last of the one and the first of the other.
 */

/** Whether an entry opens a day. */
export function opensDay({ events }: Entry): EventOf<'dayOpened'> | null {
  return events.find((event): event is EventOf<'dayOpened'> => event.type === 'dayOpened') ?? null
}

export function closesDay({ events }: Entry): EventOf<'dayClosed'> | null {
  return events.find((event): event is EventOf<'dayClosed'> => event.type === 'dayClosed') ?? null
}

export function reopensDay({ events }: Entry): boolean {
  return events.some(({ type }) => type === 'dayReopened')
}

/** What of an entry belongs to the day: in its first entry what comes from the opening on, else what comes before the next. */
export function eventsOfDay({ events }: Entry, isFirst: boolean): readonly Event[] {
  const opened = events.findIndex(({ type }) => type === 'dayOpened')
  if (opened < 0) return events
  return isFirst ? events.slice(opened) : events.slice(0, opened)
}
