import { fitList } from '../parts/fit.ts'
import type { Weight } from '../parts/text-width.ts'
import { textWidthPx } from '../parts/text-width.ts'

/**
 * Which words stand on a key. Room on a ten-inch tablet with twelve shelves is short: then less is shown, and nothing is
 * cut off. The act comes first, then its time, then what it is done to, then notes.
 */
export interface KeyWords {
  /** "Flip 2"; "" for words without an act. */
  readonly what: string
  /** "in 40 s"; "" when nothing says when. */
  readonly when: string
  /** Each by itself: as many as fit. */
  readonly contents: readonly string[]
  /** Most important first: the first that fits. */
  readonly notes: readonly string[]
}

export interface KeyText {
  readonly rows: readonly KeyRow[]
  /** Font size of the act: the room's, or that of all other words where there is no other way. */
  readonly actPx: number
  /** Height of a row in font sizes. */
  readonly rowEm: number
}

export type KeyRow =
  /** The act, with its time where both fit in one row. */
  | { readonly kind: 'act'; readonly strong: string; readonly rest: string }
  | { readonly kind: 'when' | 'contents' | 'note'; readonly text: string }

export interface KeyRoom {
  /** Inside the key, beside its ring, in CSS pixels. */
  readonly widthPx: number
  readonly heightPx: number
  readonly actPx: number
  readonly minPx: number
  /** The words for what does not fit: ("+2"), and for all of it when not even one does ("48, 3 kinds"). */
  readonly moreText: (count: number) => string
  readonly allText: string
}

export const ROW_EM = 1.15
/** Rows of one key may stand closer than lines of a text do. */
const CLOSE_ROW_EM = 1.03

/**
 * The largest way of setting a key's words that breaks none of the act's and shows what it is done to as well; where none
 * does, the largest that shows act and time; at the worst the act alone.
 */
export function keyText(words: KeyWords, room: KeyRoom): KeyText {
  const ways = [
    { ...room, rowEm: ROW_EM },
    { ...room, actPx: Math.min(room.actPx, room.minPx), rowEm: ROW_EM },
    { ...room, actPx: Math.min(room.actPx, room.minPx), rowEm: CLOSE_ROW_EM },
  ].map((way) => ({ ...setWords(words, way), actPx: way.actPx, rowEm: way.rowEm }))
  const timed = ways.filter((way) => way.hasTime)
  const unbroken = timed.filter((way) => !way.isBroken)
  const whole = unbroken.length > 0 ? unbroken : timed
  const found = whole.find((way) => way.hasContents) ?? whole[0] ?? ways[ways.length - 1]
  return found === undefined ? { rows: [], actPx: room.actPx, rowEm: ROW_EM } : found
}

/** The rows of the first text that fits whole; none when not even the last one does. */
export function firstFitting(
  texts: readonly string[],
  { widthPx, heightPx, minPx }: Pick<KeyRoom, 'widthPx' | 'heightPx' | 'minPx'>,
): readonly string[] {
  const rowsMax = Math.floor(heightPx / (minPx * ROW_EM))
  const ways = texts.map((text) => wrapped(text, minPx, widthPx, 'strong'))
  return ways.find((rows) => rows.length <= rowsMax) ?? []
}

/**
 * Words broken into rows, each as full as it gets; a word that is wider than the room is broken after a hyphen, else where
 * it must be.
 */
export function wrapped(text: string, fontPx: number, widthPx: number, weight: Weight): readonly string[] {
  const isWide = (row: string) => textWidthPx(row, fontPx, weight) > widthPx
  const rows: string[] = []
  for (const word of text.split(' ').flatMap((whole) => broken(whole, isWide))) {
    const last = rows[rows.length - 1]
    if (last !== undefined && !isWide(`${last} ${word}`)) rows[rows.length - 1] = `${last} ${word}`
    else rows.push(word)
  }
  return rows
}

function broken(word: string, isWide: (row: string) => boolean): readonly string[] {
  const pieces: string[] = []
  let piece = ''
  for (const letter of word) {
    if (piece !== '' && isWide(piece + letter)) {
      const hyphen = piece.lastIndexOf('-') + 1
      pieces.push(hyphen === 0 ? piece : piece.slice(0, hyphen))
      piece = hyphen === 0 ? '' : piece.slice(hyphen)
    }
    piece += letter
  }
  return [...pieces, piece]
}

type Way = KeyRoom & { readonly rowEm: number }

interface Set {
  readonly rows: readonly KeyRow[]
  readonly hasTime: boolean
  readonly hasContents: boolean
  /** A word of the act is broken. */
  readonly isBroken: boolean
}

function setWords(words: KeyWords, way: Way): Set {
  const withTime = actRows(words, way)
  const hasTime = heightOf(withTime, way) <= way.heightPx
  const rows = hasTime ? [...withTime] : actRows({ ...words, when: '' }, way)
  const smallPx = way.minPx * way.rowEm
  const [note] = words.notes.filter((text) => textWidthPx(text, way.minPx) <= way.widthPx)
  const left = Math.max(0, Math.floor((way.heightPx - heightOf(rows, way)) / smallPx + 1e-9))
  const texts = contentRows(words.contents, way, note !== undefined && left > 1 ? left - 1 : left)
  for (const text of texts) rows.push({ kind: 'contents', text })
  if (note !== undefined && left > texts.length) rows.push({ kind: 'note', text: note })
  const isBroken = words.what.split(' ').some((word) => textWidthPx(word, way.actPx, 'strong') > way.widthPx)
  return { rows, hasTime, hasContents: texts.length > 0 || words.contents.length === 0, isBroken }
}

function actRows({ what, when }: Pick<KeyWords, 'what' | 'when'>, way: Way): KeyRow[] {
  const { actPx, widthPx, minPx } = way
  if (what === '') return []
  const strongRows = wrapped(what, actPx, widthPx, 'strong')
  const last = strongRows[strongRows.length - 1] ?? ''
  const besidePx = textWidthPx(last, actPx, 'strong') + textWidthPx(` ${when}`, actPx)
  const rows: KeyRow[] = strongRows.map((strong) => ({ kind: 'act', strong, rest: '' }))
  if (when === '') return rows
  // Two numbers side by side are read as one: "Plain 1 of 2" with "7 min" as 27.
  const isTwoNumbers = /\d$/.test(last) && /^\d/.test(when)
  if (besidePx <= widthPx && !isTwoNumbers) return [...rows.slice(0, -1), { kind: 'act', strong: last, rest: when }]
  return [...rows, ...wrapped(when, minPx, widthPx, 'regular').map((text): KeyRow => ({ kind: 'when', text }))]
}

function heightOf(rows: readonly KeyRow[], { actPx, minPx, rowEm }: Way): number {
  return rows.reduce((sum, row) => sum + (row.kind === 'act' ? actPx : minPx) * rowEm, 0)
}

/**
 * As many texts as fit into so many rows, in order; the last row tells how many more there are. Where not even the first
 * fits, all of them are told in one sum.
 */
function contentRows(texts: readonly string[], room: KeyRoom, rowsMax: number): readonly string[] {
  const rows: string[] = []
  let shown = 0
  while (shown < texts.length && rows.length < rowsMax) {
    const rest = texts.slice(shown)
    if (rows.length === rowsMax - 1) return lastRow(rows, rest, room)
    const count = countFitting(rest, room)
    if (count === 0) return longRows(rows, rest, room, rowsMax)
    rows.push(rest.slice(0, count).join(', '))
    shown += count
  }
  return rows
}

/** A text that is wider than a row takes several, where there are as many and it can be said how many more there are. */
function longRows(rows: readonly string[], rest: readonly string[], room: KeyRoom, rowsMax: number): readonly string[] {
  const [long = '', ...others] = rest
  const parts = [...rows, ...wrapped(long, room.minPx, room.widthPx, 'regular')]
  const left = rowsMax - parts.length
  if (left > 0) return [...parts, ...contentRows(others, { ...room, allText: room.moreText(others.length) }, left)]
  if (left < 0) return lastRow(rows, rest, room)
  if (others.length === 0) return parts
  const last = `${parts[parts.length - 1] ?? ''}, ${room.moreText(others.length)}`
  return fits(last, room) ? [...parts.slice(0, -1), last] : lastRow(rows, rest, room)
}

function lastRow(rows: readonly string[], rest: readonly string[], room: KeyRoom): readonly string[] {
  const list = fitList(rest, { roomPx: room.widthPx, fontPx: room.minPx }, room.moreText)
  if (rows.length > 0 || list !== room.moreText(rest.length)) return fits(list, room) ? [...rows, list] : rows
  return [room.allText].filter((all) => all !== '' && fits(all, room))
}

function countFitting(texts: readonly string[], room: KeyRoom): number {
  let count = 0
  while (count < texts.length && fits(texts.slice(0, count + 1).join(', '), room)) count += 1
  return count
}

function fits(text: string, { widthPx, minPx }: KeyRoom): boolean {
  return textWidthPx(text, minPx) <= widthPx
}
