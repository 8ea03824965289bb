import type { DateForm } from '../../shared-core/live/sales-import.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { dateRead } from './read-moment.ts'

export interface DatesGuess {
  readonly form: DateForm
  /** A date that both readings allow, where nothing in the file decides between them; else null. */
  readonly inDoubt: { readonly text: string; readonly other: DateForm } | null
}

export interface DateHints {
  /** Today's day, days since 1970: sales do not lie ahead of it, orders not behind. */
  readonly today: number
  /** They are of orders; left out: of sales. */
  readonly isToCome?: true
  /** Whether people of this shop write the day first. */
  readonly isDayFirst: boolean
}

/** In which order a column of dates has day, month and year. Null: these are no dates. */
export function guessDates(texts: readonly string[], hints: DateHints): DatesGuess | null {
  const filled = texts.filter((text) => text !== '')
  const epoch = epochForm(filled)
  if (epoch !== null) return { form: epoch, inDoubt: null }
  const share = (form: DateForm) => filled.filter((text) => dateRead(text, form) !== null).length / filled.length
  if (filled.length === 0) return null
  if (share('y-m-d') >= MOST) return { form: 'y-m-d', inDoubt: null }
  const [monthFirst, dayFirst] = [share('m-d-y'), share('d-m-y')]
  if (Math.max(monthFirst, dayFirst) < MOST) return null
  if (monthFirst !== dayFirst) return { form: monthFirst > dayFirst ? 'm-d-y' : 'd-m-y', inDoubt: null }
  return whichFirst(filled, hints)
}
const MOST = 0.6

/** Both orders can be read. Rows of a till stand in order of time, and none lies in the future; orders are to come. */
function whichFirst(texts: readonly string[], { today, isDayFirst, isToCome }: DateHints): DatesGuess {
  const faults = (form: DateForm) => {
    const days = texts.flatMap((text) => dateRead(text, form)?.day ?? [])
    const outside = days.filter((day) =>
      isToCome ? day < today - 1 || day > today + FAR_DAYS : day > today + 1,
    ).length
    const steps = days.slice(1).map((day, index) => Math.sign(day - (days[index] ?? day)))
    const [up, down] = [steps.filter((step) => step > 0).length, steps.filter((step) => step < 0).length]
    return outside + Math.min(up, down)
  }
  const [monthFirst, dayFirst] = [faults('m-d-y'), faults('d-m-y')]
  const isDotted = texts.some((text) => /^\d{1,2}\.\d{1,2}\./.test(text))
  const usual: DateForm = isDayFirst || isDotted ? 'd-m-y' : 'm-d-y'
  const form = monthFirst === dayFirst ? usual : monthFirst < dayFirst ? 'm-d-y' : 'd-m-y'
  const other = form === 'm-d-y' ? 'd-m-y' : 'm-d-y'
  const text = texts.find((one) => dateRead(one, form)?.day !== dateRead(one, other)?.day)
  // 5/5 and a month's name are the same day either way.
  if (text === undefined || isDecided(monthFirst, dayFirst)) return { form, inDoubt: null }
  return { form, inDoubt: { text, other } }
}

/** Who orders for a day further ahead has a standing order. Common practice, no source. */
const FAR_DAYS = 120

/**
 * Whether people of a shop write the day before the month. Common practice, no source: English is written month first in
 * the Americas, elsewhere the day comes first.
 */
export function isDayFirst({ language, zone }: Pick<Shop['profile'], 'language' | 'zone'>): boolean {
  return language !== 'en' || !zone.startsWith('America/')
}

/** One stray row may stand out of order in either reading. */
function isDecided(one: number, other: number): boolean {
  return Math.abs(one - other) >= 3 && Math.min(one, other) * 5 < Math.max(one, other)
}

function epochForm(texts: readonly string[]): DateForm | null {
  if (texts.length === 0) return null
  if (texts.every((text) => /^1\d{12}$/.test(text))) return 'epoch-ms'
  return texts.every((text) => /^1\d{9}(\.\d+)?$/.test(text)) ? 'epoch-s' : null
}
