import type { DateForm } from '../../shared-core/live/sales-import.ts'
import type { LocalMoment, LocalTimes } from './local-times.ts'
import { businessMoment, DAY_SECONDS } from './local-times.ts'

/** Nobody says at what time: the row counts for its day. */
export const NO_TIME = -1
const YEAR_MIN = 2000
const YEAR_MAX = 2099

const NUMBERS = /^(\d{1,4})[-/. ](\d{1,2})[-/. ](\d{1,4})/
const RUN = /^(\d{4})(\d{2})(\d{2})(?!\d)/
const TIME =
  /^[T ,]*(\d{1,2})(?:[:.h](\d{2}))?(?::(\d{2})(?:[.,]\d+)?)?\s*(?:([ap])\.?\s?m\.?)?\s*(Z|UTC|[+-]\d{2}:?\d{2})?$/i
const EPOCH = /^\d{9,13}(?:\.\d+)?$/

/** Months as they are abbreviated in English and Spanish; three letters tell them apart. */
const MONTHS: ReadonlyMap<string, number> = new Map(
  ['jan ene', 'feb', 'mar', 'apr abr', 'may', 'jun', 'jul', 'aug ago', 'sep set', 'oct', 'nov', 'dec dic'].flatMap(
    (names, index) => names.split(' ').map((name) => [name, index + 1] as const),
  ),
)

/** Which of a moment's two cells cannot be read. */
export type MomentFault = 'no-date' | 'no-time'

/** Reads dates and times as one file writes them; a date that comes again and again is read once. */
export class MomentReader {
  readonly #form: DateForm
  readonly #times: LocalTimes
  #lastText = ''
  #last: DateRead | null = null
  /** Rows of a purchase say the same. */
  #before: { readonly date: string; readonly clock: string | null; readonly read: LocalMoment | MomentFault } | null =
    null

  constructor(form: DateForm, times: LocalTimes) {
    this.#form = form
    this.#times = times
  }

  /**
   * The business day and second of a row.
   * @param clock the time's own cell; null: the time, if any, follows the date
   */
  read(date: string, clock: string | null): LocalMoment | MomentFault {
    const before = this.#before
    if (before !== null && before.date === date && before.clock === clock) return before.read
    const read = this.#read(date, clock)
    this.#before = { date, clock, read }
    return read
  }

  #read(date: string, clock: string | null): LocalMoment | MomentFault {
    if (this.#form === 'epoch-s' || this.#form === 'epoch-ms') return this.#epoch(date)
    const read = this.#dateOf(date)
    if (read === null) return 'no-date'
    const time = clock ?? date.slice(read.length)
    if (time.trim() === '') return clock === null ? { day: read.day, second: NO_TIME } : 'no-time'
    // A clock's own cell may say the date as well.
    const own = clock === null || clock.length < 8 ? null : this.#dateOf(clock)
    return this.#momentOf(read.day, own === null ? time : time.slice(own.length))
  }

  #epoch(text: string): LocalMoment | MomentFault {
    if (!EPOCH.test(text)) return 'no-date'
    const atMs = Number(text) * (this.#form === 'epoch-s' ? 1_000 : 1)
    const moment = this.#times.of(atMs)
    return isInRange(moment.day) ? businessMoment(moment) : 'no-date'
  }

  #dateOf(text: string): DateRead | null {
    // Rows of a day stand together and begin alike.
    if (this.#last !== null && text.startsWith(this.#lastText)) {
      const next = text.charCodeAt(this.#lastText.length)
      if (!(next >= 48 && next <= 57)) return this.#last
    }
    const read = dateRead(text, this.#form)
    if (read !== null) {
      this.#last = read
      this.#lastText = text.slice(0, read.length)
    }
    return read
  }

  #momentOf(day: number, text: string): LocalMoment | MomentFault {
    const found = TIME.exec(text.trimEnd())
    if (found === null) return 'no-time'
    const [, hourText = '', minuteText, secondText = '0', half, zone] = found
    if (minuteText === undefined && half === undefined) return 'no-time'
    const hour = hourOf(Number(hourText), half)
    const minute = Number(minuteText ?? 0)
    const second = Number(secondText)
    if (hour === null || minute > 59 || second > 60) return 'no-time'
    const seconds = hour * 3_600 + minute * 60 + Math.min(second, 59)
    if (zone === undefined) return businessMoment({ day, second: seconds })
    return businessMoment(this.#times.of((day * DAY_SECONDS + seconds - offsetSeconds(zone)) * 1_000))
  }
}

interface DateRead {
  readonly day: number
  /** Of the text, in letters. */
  readonly length: number
}

/** The date at the beginning of a text; null when there is none in this order. */
export function dateRead(text: string, form: DateForm): DateRead | null {
  const numbers = NUMBERS.exec(text)
  if (numbers !== null) return dateOfNumbers(numbers, form)
  const run = form === 'y-m-d' ? RUN.exec(text) : null
  if (run !== null) return checked(Number(run[1]), Number(run[2]), Number(run[3]), run[0].length)
  return dateInWords(text)
}

function dateOfNumbers([all, one = '', two = '', three = '']: RegExpExecArray, form: DateForm): DateRead | null {
  const [a, b, c] = [Number(one), Number(two), Number(three)]
  if (form === 'y-m-d') return one.length === 4 && three.length <= 2 ? checked(a, b, c, all.length) : null
  if (one.length > 2 || (three.length !== 4 && three.length !== 2)) return null
  const year = three.length === 2 ? 2_000 + c : c
  return form === 'm-d-y' ? checked(year, a, b, all.length) : checked(year, b, a, all.length)
}

const WORDS =
  /^(?:\p{L}+\.?,? +)?(?:(\d{1,2})[-. ]+(?:de )?(\p{L}{3,})\.?|(\p{L}{3,})\.?[-. ]+(\d{1,2})),?[-. ]+(?:de )?(\d{4}|\d{2})(?!\d)/u

/** "Nov 26, 2026", "26-Nov-26", "jue 26 de nov de 2026": the name tells month from day. */
function dateInWords(text: string): DateRead | null {
  const found = WORDS.exec(text)
  if (found === null) return null
  const [all, day1, month1, month2, day2, yearText = ''] = found
  const month = MONTHS.get((month1 ?? month2 ?? '').slice(0, 3).toLowerCase())
  if (month === undefined) return null
  const year = Number(yearText) + (yearText.length === 2 ? 2_000 : 0)
  return checked(year, month, Number(day1 ?? day2), all.length)
}

function checked(year: number, month: number, date: number, length: number): DateRead | null {
  if (year < YEAR_MIN || year > YEAR_MAX || month < 1 || month > 12 || date < 1) return null
  const at = new Date(Date.UTC(year, month - 1, date))
  // The 31st of a month that has none would become the first of the next.
  return at.getUTCMonth() === month - 1 ? { day: Math.round(at.getTime() / 86_400_000), length } : null
}

function isInRange(day: number): boolean {
  const year = new Date(day * 86_400_000).getUTCFullYear()
  return year >= YEAR_MIN && year <= YEAR_MAX
}

function hourOf(hour: number, half: string | undefined): number | null {
  if (half === undefined) return hour <= 23 ? hour : null
  if (hour < 1 || hour > 12) return null
  return (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0)
}

function offsetSeconds(zone: string): number {
  if (!/^[+-]/.test(zone)) return 0
  const seconds = Number(zone.slice(1, 3)) * 3_600 + Number(zone.slice(-2)) * 60
  return zone.startsWith('-') ? -seconds : seconds
}
