import { z } from 'zod'
import { nearestWord } from './nearest-word.ts'

/**
 * The kinds of field that files and commands are made of. Each carries its sentence of what would be right as zod's
 * message; what is wrong is said by `problems.ts`, which sees the value. So no sentence of zod's own reaches people.
 * Bounds abort: zod would go on to checks that count on them.
 */

/** What an id looks like: it stands in URLs, attributes and file names as it is. */
const ID_PATTERN = /^[a-z0-9][a-z0-9.-]{0,63}$/
/** No control, invisible or unassigned characters; no space at either end. */
const NAME_PATTERN = /^(?! )[^\p{C}\p{Zl}\p{Zp}]*(?<! )$/u
const DATE_PATTERN = /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/
/** A country, or a part of one, as ISO 3166-1 and 3166-2 write them. */
const REGION_PATTERN = /^[A-Z]{2}(?:-[A-Z0-9]{1,3})?$/
const CLOCK_PATTERN = /^(?:[01][0-9]|2[0-3]):[0-5][0-9]$/

export function whole(from: number, to: number) {
  const right = `A whole number from ${from} to ${to}.`
  // Adding zero makes -0 a plain 0: the two are one number in JSON and two in the fold.
  return z
    .int(right)
    .min(from, { error: right, abort: true })
    .max(to, { error: right, abort: true })
    .overwrite((value) => value + 0)
}

export function decimal(from: number, to: number) {
  const right = `A number from ${from} to ${to}.`
  return z
    .number(right)
    .min(from, { error: right, abort: true })
    .max(to, { error: right, abort: true })
    .overwrite((value) => value + 0)
}

export function name(most: number) {
  const right = `A name of 1 to ${most} characters in one line, without spaces at its ends.`
  return z.string(right).min(1, right).max(most, right).regex(NAME_PATTERN, right)
}

export function id() {
  const right = 'Small letters, digits, dots and dashes, 64 at most; the first is a letter or digit.'
  return z.string(right).regex(ID_PATTERN, right)
}

export function clock() {
  const right = 'A time of day from "00:00" to "23:59", with two digits each.'
  return z.string(right).regex(CLOCK_PATTERN, right)
}

/** That there is such a day is one of the rules between fields (`demand-rules.ts`). */
export function date() {
  const right = 'A date as YYYY-MM-DD.'
  return z.string(right).regex(DATE_PATTERN, right)
}

export function region() {
  const right = 'A country or a part of one as ISO 3166 writes it, e.g. "US" or "US-IL".'
  return z.string(right).regex(REGION_PATTERN, right)
}

export function flag() {
  return z.boolean('true or false.')
}

export function oneOf<const Words extends readonly [string | number, ...(string | number)[]]>(words: Words) {
  const all = words.map((word) => JSON.stringify(word))
  const right = all.length === 1 ? `${all[0]}.` : `${all.slice(0, -1).join(', ')} or ${all[all.length - 1]}.`
  return z.literal(words, right)
}

/** An object with these keys and no others. For each key that is not known, a line says which was probably meant. */
export function record<Shape extends z.ZodRawShape>(shape: Shape) {
  const keys = Object.keys(shape)
  const right = `An object with ${keys.map((key) => `"${key}"`).join(', ')}.`
  return z.strictObject(shape, {
    error: (issue) =>
      issue.code === 'unrecognized_keys' ? issue.keys.map((key) => rightKey(key, keys)).join('\n') : right,
  })
}

export function list<Entry extends z.ZodType>(entry: Entry, what: string, from: number, to: number) {
  const right = `A list of ${from} to ${to} ${what}.`
  return z.array(entry, right).min(from, right).max(to, right)
}

function rightKey(key: string, keys: readonly string[]): string {
  const nearest = nearestWord(key, keys)
  return nearest === null ? `One of ${keys.map((known) => `"${known}"`).join(', ')}.` : `"${nearest}".`
}
