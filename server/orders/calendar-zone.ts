import ICAL from 'ical.js'
import type { ShopClock } from '../../shared-core/live/protocol.ts'

const MINUTE_MS = 60_000

/**
 * The shop's zone as a calendar wants it told: each change of its offset that the shop's own table knows, which reaches
 * a year and a half ahead; whoever subscribes asks again long before.
 * Source: RFC 5545, 3.6.5.
 */
export function calendarZone({ zone, offsets }: ShopClock): ICAL.Component {
  const told = new ICAL.Component('vtimezone')
  told.addPropertyWithValue('tzid', zone)
  const least = Math.min(...offsets.map(({ offsetMinutes }) => offsetMinutes))
  offsets.forEach(({ fromMs, offsetMinutes }, index) => {
    const before = offsets[index - 1]?.offsetMinutes ?? offsetMinutes
    const part = new ICAL.Component(offsetMinutes > least ? 'daylight' : 'standard')
    // The first one holds since ever: nothing before it is told.
    const wallMs = index === 0 ? 0 : fromMs + before * MINUTE_MS
    part.addPropertyWithValue('dtstart', wallTime(wallMs))
    part.addPropertyWithValue('tzoffsetfrom', ICAL.UtcOffset.fromSeconds(before * 60))
    part.addPropertyWithValue('tzoffsetto', ICAL.UtcOffset.fromSeconds(offsetMinutes * 60))
    told.addSubcomponent(part)
  })
  return told
}

/** A time on the wall: no instant by itself. @param wallMs as if the wall showed UTC */
export function wallTime(wallMs: number): ICAL.Time {
  return ICAL.Time.fromDateTimeString(new Date(wallMs).toISOString().slice(0, 19))
}

/** An instant. */
export function utcTime(atMs: number): ICAL.Time {
  return ICAL.Time.fromDateTimeString(`${new Date(atMs).toISOString().slice(0, 19)}Z`)
}
