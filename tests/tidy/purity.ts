import type { Finding, SourceFile } from './source-files.ts'
import { isCode, withoutComments } from './source-files.ts'

/**
 * What shared-core must not touch. Names of the browser and of Node are compile errors there already (its own
 * compiler project has neither's types); these are of the language itself.
 */
const IMPURE: readonly (readonly [RegExp, string])[] = [
  [/\bDate\.now\b|\bnew Date\b(?!\([^)])|(?<!new )\bDate\(/, 'reads the clock; instants come in as arguments'],
  [/\bMath\.random\b/, 'uses Math.random; randomness comes in as an argument'],
  [/\bglobalThis\b/, 'reaches for globalThis'],
  [/\b(Intl|toLocale\w*|localeCompare)\b/, 'depends on a locale; compare by code units, format in the client'],
  [/\b(async|await|Promise)\b/, 'waits for something; the core answers at once'],
]

/** Date also knows the device's zone, so that its calendar is for those files only that keep to UTC throughout. */
const CALENDAR = /\bDate\b/
const CALENDAR_EXCUSED: ReadonlyMap<string, string> = new Map([
  ['shared-core/day/label.ts', 'the date after a date, read and written as UTC'],
  ['shared-core/live/noon.ts', 'noon of a date, read as UTC and moved by the shop’s own offset'],
])

/**
 * Engines may differ in the last bit of these, and every screen folds the same events. A folder is excused where its
 * results are carried by an event or a broadcast value and never computed on a screen; the reason stands beside it.
 */
const INEXACT =
  /\bMath\.(exp|expm1|pow|log|log2|log10|log1p|sin|cos|tan|asin|acos|atan|atan2|sinh|cosh|tanh|cbrt|hypot)\b|\*\*/
const INEXACT_EXCUSED: ReadonlyMap<string, string> = new Map([
  ['shared-core/demand/', 'advice: worked out by the server, broadcast as a value, outside fold and hash'],
  ['shared-core/plan/', 'advice as well'],
  ['shared-core/oven/', 'advice as well'],
])

/** Code of shared-core that is not pure, or not the same on every screen. */
export function checkPurity(files: readonly SourceFile[]): Finding[] {
  return files
    .filter(({ path }) => path.startsWith('shared-core/') && isCode(path))
    .flatMap(({ path, text }) => faultsIn(path, withoutComments(text, 'blank')).map((what) => ({ path, what })))
}

function faultsIn(path: string, code: string): string[] {
  const faults = IMPURE.filter(([pattern]) => pattern.test(code)).map(([, what]) => what)
  if (CALENDAR.test(code) && !CALENDAR_EXCUSED.has(path)) faults.push('uses Date, which knows the device’s zone')
  const inexact = INEXACT.exec(code)
  if (inexact !== null && ![...INEXACT_EXCUSED.keys()].some((excused) => path.startsWith(excused))) {
    faults.push(`uses ${inexact[0]}, whose last bit may differ between engines`)
  }
  return faults
}
