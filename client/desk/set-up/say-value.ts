import type { Degrees } from '../../../shared-core/shop/formula.ts'
import type { Allergen, DwellWindow, Hours, Shop, Temperature, Weight } from '../../../shared-core/shop/shop.ts'
import { ALLERGENS } from '../../../shared-core/shop/stages.ts'
import { minuteText } from '../../live/clock-text.ts'
import type { DeskWords } from '../../words/desk.ts'
import type { SetUpSentences } from '../../words/set-up.ts'

/** What values are told with: the language, and the shop as it is or will be. */
export interface Telling {
  readonly words: DeskWords
  readonly say: SetUpSentences
  readonly shop: Shop
}

const NOON_MINUTE = 720

/** A clock time the shop's way, with its half of the day on a clock of twelve hours. @example "4:30 am", "16:30" */
export function minuteSaid(minute: number, { words, shop }: Telling): string {
  const { clock } = shop.profile
  const text = minuteText(minute, clock)
  if (clock === 24) return text
  return `${text} ${minute < NOON_MINUTE ? words.desk.halfDays.am : words.desk.halfDays.pm}`
}

/** A span in the largest unit in which it is a plain number. @example "90 s", "5 min", "1.5 h", "−20 min" */
export function spanSaid(ms: number, { words }: Telling): string {
  const { unit, value } = spanParts(ms)
  return `${value < 0 ? '−' : ''}${Math.abs(value)} ${words.times.units[unit]}`
}

/** Seconds under two minutes, hours from two on, where they come out in tenths at most; else minutes. */
export function spanParts(ms: number): { readonly unit: 's' | 'min' | 'h'; readonly value: number } {
  const [size, isTenths] = [Math.abs(ms), (one: number) => Number.isInteger((ms / one) * 10)]
  if (size >= 7_200_000 && isTenths(3_600_000)) return { unit: 'h', value: ms / 3_600_000 }
  const inMinutes = Number.isInteger(ms / 60_000) || (size >= 120_000 && isTenths(60_000))
  return inMinutes ? { unit: 'min', value: ms / 60_000 } : { unit: 's', value: ms / 1_000 }
}

const MS_IN = { s: 1_000, min: 60_000, h: 3_600_000 } as const

/** A number of a unit, to a thousandth: what was entered in another unit may not come out even. */
export function inUnit(ms: number, unit: DwellWindow['unit']): number {
  return Math.round((ms * 1_000) / MS_IN[unit]) / 1_000
}

/** @example "15 – 18 – 25 min" */
export function dwellSaid({ earliestMs, targetMs, latestMs, unit }: DwellWindow, { words }: Telling): string {
  const three = [earliestMs, targetMs, latestMs].map((ms) => inUnit(ms, unit))
  return `${three.join(' – ')} ${words.times.units[unit]}`
}

/** @example "1.75" */
export function moneySaid(cents: number): string {
  return (cents / 100).toFixed(2)
}

export function temperatureSaid({ degrees, unit }: Temperature): string {
  return `${degrees} °${unit}`
}

export function weightSaid({ thousandths, unit }: Weight): string {
  return `${thousandths / 1_000} ${unit}`
}

/** @example "4.25 oz", "not said" */
export function weightOrNot(weight: Weight | null, { say }: Telling): string {
  return weight === null ? say.form.notSaid : weightSaid(weight)
}

/** In the order of the acts that name them. @example "milk, wheat" */
export function allergensSaid(contains: readonly Allergen[], { say }: Telling): string {
  const named = ALLERGENS.filter((allergen) => contains.includes(allergen))
  return named.map((allergen) => say.options.allergen[allergen]).join(', ') || '–'
}

/** As it was entered. @example "76.5 °F" */
export function degreesSaid({ thousandths, unit }: Degrees): string {
  return `${thousandths / 1_000} °${unit}`
}

/** @example "57 %" */
export function percentSaid(thousandths: number): string {
  return `${Math.round(thousandths) / 1_000} %`
}

/** @example "6:00 am – 3:00 pm" */
export function hoursSaid(hours: Hours | null, telling: Telling): string {
  const { say } = telling
  if (hours === null) return say.sums.closed
  const { changeoverFromMinute: from, changeoverToMinute: to } = hours
  const open = `${minuteSaid(hours.openMinute, telling)} – ${minuteSaid(hours.closeMinute, telling)}`
  if (from === null || to === null) return open
  return `${open}, ${say.sums.changeover(minuteSaid(from, telling), minuteSaid(to, telling))}`
}
