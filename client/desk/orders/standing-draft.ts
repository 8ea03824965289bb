import { isDate } from '../../../shared-core/day/label.ts'
import type { StandingOrder } from '../../../shared-core/orders/order.ts'
import type { OrderCommand, OrderDetails } from '../../../shared-core/orders/order-commands.ts'
import type { Recurrence } from '../../../shared-core/orders/recurrence.ts'
import { datesOf } from '../../../shared-core/orders/recurrence.ts'
import type { StandingMissing } from '../../words/desk-orders-standing.ts'
import type { AskedDraft } from './asked-draft.ts'
import { askedLines, detailsToSend, linesTyped, minuteOf, NEW_ASKED, timeText } from './asked-draft.ts'

type SetStanding = Extract<OrderCommand, { type: 'setStanding' }>

/** A standing order while it is typed. */
export interface StandingDraft extends AskedDraft {
  readonly recurrence: RecurrenceDraft
  readonly onHolidays: boolean
}

/** As an input of dates has them, "" while none is typed. */
export interface RecurrenceDraft extends Omit<Recurrence, 'from' | 'until'> {
  readonly from: string
  readonly until: string
}

export function newStanding(from: string): StandingDraft {
  const recurrence = {
    freq: 'weekly',
    interval: 1,
    from,
    until: '',
    weekdays: [],
    nth: null,
    except: [],
    also: [],
  } as const
  return { ...NEW_ASKED, recurrence, onHolidays: false }
}

export function standingTyped(standing: StandingOrder, dozenPieces: number): StandingDraft {
  const { mark, way, runId, stop, dueMinute, lines, isPaid, recurrence, onHolidays } = standing
  return {
    mark,
    way,
    runId,
    stop: stop === 0 ? null : stop,
    time: timeText(dueMinute),
    lines: linesTyped(lines, dozenPieces),
    isPaid,
    recurrence: { ...recurrence, until: recurrence.until ?? '' },
    onHolidays,
  }
}

/** Years that its days are looked for in. */
const YEARS_LOOKED = 3

export function standingMissing(draft: StandingDraft): readonly StandingMissing[] {
  const { mark, time, lines, recurrence } = draft
  const missing: StandingMissing[] = []
  if (mark.trim() === '') missing.push('mark')
  if (minuteOf(time) === null) missing.push('time')
  if (askedLines(lines).length === 0) missing.push('pieces')
  const { from, until, weekdays, freq, nth } = recurrence
  if (!isDate(from)) return [...missing, 'from']
  if (isDate(until) && until < from) missing.push('until')
  else if ((freq === 'weekly' || nth !== null) && weekdays.length === 0) missing.push('weekdays')
  else if (nextDates(recurrenceOf(recurrence), from, 1).length === 0) missing.push('never')
  return missing
}

/** The rule without what is not meant by how it comes. */
export function recurrenceOf({ until, ...draft }: RecurrenceDraft): Recurrence {
  const { freq, weekdays, nth } = draft
  return {
    ...draft,
    until: isDate(until) ? until : null,
    weekdays: [...weekdays].sort((one, other) => one - other),
    nth: freq === 'monthly' && weekdays.length > 0 ? nth : null,
  }
}

/** The first so many dates from a day on. */
export function nextDates(recurrence: Recurrence, from: string, most: number): readonly string[] {
  for (let years = 0; years <= YEARS_LOOKED; years += 1) {
    const dates = datesOf(recurrence, from, `${Number(from.slice(0, 4)) + years}-12-31`)
    if (dates.length >= most || years === YEARS_LOOKED) return dates.slice(0, most)
  }
  return []
}

/** The command; nothing may be missing in the draft. */
export function setStanding(
  draft: StandingDraft,
  standingId: SetStanding['standingId'],
  of: { readonly typed: OrderDetails | null; readonly known: OrderDetails | null },
): SetStanding {
  const { mark, way, runId, stop, time, lines, isPaid, recurrence, onHolidays } = draft
  const isOnRun = way === 'delivery' && runId !== null
  return {
    type: 'setStanding',
    standingId,
    mark: mark.trim(),
    way,
    runId: isOnRun ? runId : null,
    stop: isOnRun ? (stop ?? 0) : 0,
    dueMinute: minuteOf(time) ?? 0,
    lines: askedLines(lines),
    isPaid,
    recurrence: recurrenceOf(recurrence),
    onHolidays,
    ...detailsToSend(of.typed, of.known),
  }
}

/** The command that leaves everything as it is, to be sent with one thing another way. */
export function sameStanding(standing: StandingOrder, dozenPieces: number): SetStanding {
  return setStanding(standingTyped(standing, dozenPieces), standing.id, { typed: null, known: null })
}
