import type { HolidaysTypes } from 'date-holidays'
import { dateAfter } from '../../shared-core/day/label.ts'
import type { Country, Holiday, HolidaysOf, NamedRegion } from '../../shared-core/live/holidays.ts'
import { region } from '../../shared-core/shop/set-up-fields.ts'
import type { HolidaysAsked } from './holiday-questions.ts'

/**
 * Public holidays by region, from the library date-holidays (its data: CC BY 3.0). It is two megabytes of rules that
 * few days need, so it is loaded when the desk first asks.
 */
const library = async () => (await import('date-holidays')).default

/** The regions that holidays are known of, by their English names. */
export async function holidayRegions(): Promise<readonly Country[]> {
  const Holidays = await library()
  const all = new Holidays()
  const countries = named(all.getCountries('en'), all.getCountries('es'), '')
  return countries.map((country) => ({
    ...country,
    parts: named(all.getStates(country.code, 'en'), all.getStates(country.code, 'es'), `${country.code}-`),
  }))
}

interface Names {
  readonly [code: string]: string
}

function named(en: Names | undefined, es: Names | undefined, prefix: string): NamedRegion[] {
  return (
    Object.entries(en ?? {})
      .map(([code, name]) => ({ code: `${prefix}${code}`, en: name, es: es?.[code] ?? name }))
      // A few parts have a name for a code, by which no set-up could name them.
      .filter(({ code }) => region().safeParse(code).success)
      .sort((one, other) => (one.en < other.en ? -1 : 1))
  )
}

/**
 * The holidays of a region between two dates, those of one name together, in the order of their first date.
 * @param asked a part that the library does not know has its country's holidays
 * @returns null for a country that it does not know
 */
export async function holidaysOf({ region: asked, from, to }: HolidaysAsked): Promise<HolidaysOf | null> {
  const Holidays = await library()
  const [country = '', part] = asked.split('-')
  const all = new Holidays()
  if (all.getCountries('en')[country] === undefined) return null
  const isPart = part !== undefined && all.getStates(country, 'en')?.[part] !== undefined
  // Asked in one language after another, it takes names of the first for the second: each has its own.
  const namedIn = (...languages: string[]) =>
    isPart ? new Holidays(country, part, { languages }) : new Holidays(country, { languages })
  const found = { en: namedIn('en-us', 'en'), es: namedIn('es') }
  const days = new Map<string, Found>()
  for (let year = Number(from.slice(0, 4)); year <= Number(to.slice(0, 4)); year++) addYear(days, found, year)
  const holidays = [...days.values()]
    .map((day) => ({ ...day, spans: day.spans.filter((span) => span.to >= from && span.from <= to) }))
    .filter(({ spans }) => spans.length > 0)
  return { region: isPart ? asked : country, holidays: holidays.sort(byFirstDate) }
}

type Found = Omit<Holiday, 'spans'> & { readonly spans: Holiday['spans'][number][] }

function addYear(days: Map<string, Found>, { en, es: inSpanish }: InBoth, year: number): void {
  const spanish = inSpanish.getHolidays(year)
  for (const holiday of en.getHolidays(year)) {
    const id = idOf(holiday.name)
    if (id === '') continue
    const es = spanish.find(({ rule, date }) => rule === holiday.rule && date === holiday.date)?.name ?? holiday.name
    const before = days.get(id)
    const span = spanOf(holiday)
    if (before === undefined)
      days.set(id, { id, en: holiday.name, es, isPublic: holiday.type === 'public', spans: [span] })
    else if (before.spans.every((one) => one.to < span.from)) before.spans.push(span)
  }
}

interface InBoth {
  readonly en: YearsHolidays
  readonly es: YearsHolidays
}
interface YearsHolidays {
  getHolidays(year: number): HolidaysTypes.Holiday[]
}

const DAY_MS = 86_400_000

/**
 * The days that a holiday fills; its date is local to the region. One that begins at noon or in the evening is that day's,
 * and a day on which clocks change is still one.
 */
function spanOf({ date, start, end }: HolidaysTypes.Holiday): Holiday['spans'][number] {
  const from = date.slice(0, 10)
  const days = Math.max(1, Math.round((end.getTime() - start.getTime()) / DAY_MS))
  return { from, to: dateAfter(from, days - 1) }
}

/** @example idOf("New Year's Day") // 'new-years-day' */
function idOf(name: string): string {
  return name
    .normalize('NFD')
    .replace(/[\p{M}'’.]/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 48)
}

function byFirstDate(one: Holiday, other: Holiday): number {
  const [a, b] = [one.spans[0]?.from ?? '', other.spans[0]?.from ?? '']
  return a < b || (a === b && one.id < other.id) ? -1 : 1
}
