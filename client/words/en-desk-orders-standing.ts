import type { Recurrence } from '../../shared-core/orders/recurrence.ts'
import { isoWeekday } from '../../shared-core/shop/hours.ts'
import type { StandingWords } from './desk-orders-standing.ts'
import type { Words } from './words.ts'

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun']
const NTH: { readonly [nth: number]: string } = { 1: '1st', 2: '2nd', 3: '3rd', 4: '4th', 5: '5th', '-1': 'last' }
const UNITS = { daily: ['day', 'days'], weekly: ['week', 'weeks'], monthly: ['month', 'months'] } as const

export function enStanding({ times, line }: Words): StandingWords {
  const unit = (freq: Recurrence['freq'], count: number) => UNITS[freq][count === 1 ? 0 : 1]
  const weekday = (iso: number) => WEEKDAYS[iso - 1] ?? ''
  const nth = (number: number) => `the ${NTH[number] ?? number}`
  const dated = (date: string, today: string) =>
    date.slice(0, 4) === today.slice(0, 4) ? times.date(date) : `${times.date(date)}, ${date.slice(0, 4)}`
  return {
    lead: 'They come by themselves: the order of a day is made when that day opens, and tomorrow’s dough counts them.',
    none: 'No order stands yet.',
    add: 'A new standing order',
    newTitle: 'A new standing order',
    title: (mark) => `Standing order ${mark}`,
    columns: { mark: 'for', when: 'when', what: 'what', next: 'next' },
    rule: (recurrence) => rule(recurrence, { weekday, nth, unit, list: line.list }),
    bounds: ({ from, until }, today) =>
      [from > today ? `from ${dated(from, today)}` : '', until === null ? '' : `until ${dated(until, today)}`]
        .filter((part) => part !== '')
        .join(', '),
    freq: 'Comes',
    freqs: { daily: 'by days', weekly: 'by weeks', monthly: 'by months' },
    interval: 'Every',
    unit,
    weekdays: 'On',
    weekday,
    inMonth: 'In the month',
    onDate: (from) => (from === '' ? 'on its date' : `on the ${Number(from.slice(8))}.`),
    everyWeekday: 'every such weekday',
    nth,
    from: 'From',
    until: 'Until',
    untilHint: 'Left empty, it goes on.',
    exceptions: 'Exceptions',
    exceptHint: 'Days on which it does not come, or comes besides.',
    exceptDate: 'Day',
    addExcept: 'Not on that day',
    addAlso: 'Besides on that day',
    except: (date) => `not on ${times.date(date)}, ${date.slice(0, 4)}`,
    also: (date) => `besides on ${times.date(date)}, ${date.slice(0, 4)}`,
    takeAway: (told) => `Take away: ${told}`,
    onHolidays: 'Comes on holidays too',
    onHolidaysHint: 'Holidays are those of the shop’s calendar. When the shop is closed, it does not come.',
    next: 'Next days',
    nextNone: 'It comes on no day of the next year.',
    holiday: 'holiday: it does not come',
    closed: 'closed: it does not come',
    save: 'Save',
    end: 'End it',
    endOf: (mark) => `End it: ${mark}`,
    sureToEnd: (mark) => `End ${mark}? Orders of it that are made already stay.`,
    yesEnd: 'Yes, end it',
    no: 'No',
    missing: {
      mark: 'Say the mark.',
      time: 'Say the time.',
      pieces: 'Say how many pieces.',
      from: 'Say from which day on.',
      until: 'It would end before it begins.',
      weekdays: 'Choose a weekday.',
      never: 'So it would never come.',
    },
    unknown: 'There is no such standing order any more.',
  }
}

interface RuleWords {
  readonly weekday: (iso: number) => string
  readonly nth: (nth: number) => string
  readonly unit: (freq: Recurrence['freq'], count: number) => string
  readonly list: (items: readonly string[]) => string
}

function rule({ freq, interval, weekdays, nth, from }: Recurrence, say: RuleWords): string {
  const days = say.list([...weekdays].sort((one, other) => one - other).map(say.weekday))
  const every = interval === 1 ? '' : `every ${interval} ${say.unit(freq, interval)}`
  if (freq === 'daily') {
    if (weekdays.length > 0) return every === '' ? `every ${days}` : `${every}, if a ${days}`
    return every === '' ? 'every day' : every
  }
  if (freq === 'weekly') {
    const on = weekdays.length === 0 ? say.weekday(isoWeekday(from)) : days
    return every === '' ? `every ${on}` : `${every} on ${on}`
  }
  const months = every === '' ? 'of every month' : `, ${every}`
  const which =
    weekdays.length === 0 ? `day ${Number(from.slice(8))}` : nth === null ? `every ${days}` : `${say.nth(nth)} ${days}`
  return `${which}${months.startsWith(',') ? '' : ' '}${months}`
}
