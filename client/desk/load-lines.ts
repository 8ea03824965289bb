import { nearestWord } from '../../shared-core/shop/nearest-word.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { MistakeWords } from '../words/desk.ts'
import { typedTime } from './typed-time.ts'

/** A load list in the form that the server takes, with the shop's own names. */
export interface LoadListFile {
  readonly loads: readonly {
    readonly in: string | null
    readonly shelf: string | null
    readonly lines: readonly (readonly [variety: string, pieces: number])[]
  }[]
}

export type LoadLinesRead =
  | { readonly ok: true; readonly file: LoadListFile }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** What the server takes of one variety in one load. */
const PIECES_MAX = 5_000

/**
 * Reads a load list as people type it, one load a line: a time, a shelf, then varieties with pieces, separated by
 * commas. Time and shelf may be left out; empty lines are passed over. Every mistake is told with the number of its
 * line (`path` is the line's number, as text).
 * @example readLoadLines('5:10 1 Sesame 36, Poppy 24', shop, words)
 *   // { loads: [{ in: '5:10', shelf: '1', lines: [['Sesame', 36], ['Poppy', 24]] }] }
 */
export function readLoadLines(text: string, shop: Shop, words: MistakeWords): LoadLinesRead {
  const problems: Problem[] = []
  const loads = text.split('\n').flatMap((line, index) => {
    const read = { line: line.trim(), path: String(index + 1), shop, words, problems }
    return read.line === '' ? [] : [loadOf(read)]
  })
  if (loads.length === 0) problems.push({ path: '', wrong: words.empty, right: words.unreadableRight })
  return problems.length > 0 ? { ok: false, problems } : { ok: true, file: { loads } }
}

interface Reading {
  readonly line: string
  readonly path: string
  readonly shop: Shop
  readonly words: MistakeWords
  readonly problems: Problem[]
}

function loadOf(reading: Reading): LoadListFile['loads'][number] {
  const { at, rest } = timeOf(reading)
  const { shelf, rest: contents } = shelfOf(rest, reading)
  const lines = contents
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .flatMap((part) => lineOf(part, reading))
  const { path, words, problems, line } = reading
  if (contents.replaceAll(',', '').trim() === '')
    problems.push({ path, wrong: words.unreadable(line), right: words.unreadableRight })
  return { in: at, shelf, lines }
}

function timeOf({ line, path, words, problems }: Reading): { at: string | null; rest: string } {
  const typed = typedTime(line)
  if (typed.kind === 'none') return { at: null, rest: line }
  if (typed.kind === 'time') return typed
  problems.push({ path, wrong: words.notATime(typed.typed), right: words.timeRight })
  return { at: null, rest: typed.rest }
}

/** The longest shelf's name that the rest begins with; a number that no variety begins with was meant as a shelf. */
function shelfOf(rest: string, { path, shop, words, problems }: Reading): { shelf: string | null; rest: string } {
  const names = namesInUse(shop.shelves)
  const begins = (name: string) => rest.toLowerCase().startsWith(`${name.toLowerCase()} `)
  const isVariety = namesInUse(shop.varieties).some(begins)
  const shelf = [...names].sort((one, other) => other.length - one.length).find(begins)
  if (isVariety) return { shelf: null, rest }
  if (shelf !== undefined) return { shelf, rest: rest.slice(shelf.length) }
  const number = /^(\d+)\s+\D/.exec(rest)?.[1]
  if (number === undefined) return { shelf: null, rest }
  problems.push({ path, wrong: words.unknownShelf(number), right: words.oneOf(names) })
  return { shelf: null, rest: rest.slice(number.length) }
}

function lineOf(part: string, { path, shop, words, problems }: Reading): (readonly [string, number])[] {
  const found = /^(.*\S)\s+(\d+)$/.exec(part)
  const typed = found?.[1]
  const pieces = Number(found?.[2])
  if (typed === undefined) {
    problems.push({ path, wrong: words.unreadable(part), right: words.unreadableRight })
    return []
  }
  const names = namesInUse(shop.varieties)
  const name = names.find((one) => one.toLowerCase() === typed.toLowerCase())
  if (name === undefined) {
    const near = nearestWord(typed, names)
    problems.push({ path, wrong: words.unknownVariety(typed), right: words.oneOf(near === null ? names : [near]) })
    return []
  }
  if (pieces < 1 || pieces > PIECES_MAX) {
    problems.push({ path, wrong: words.tooMany(pieces), right: words.tooManyRight })
    return []
  }
  return [[name, pieces]]
}

function namesInUse(table: ReadonlyMap<string, { name: string; order: number; retired: boolean }>): readonly string[] {
  return [...table.values()]
    .filter((entity) => !entity.retired)
    .sort((one, other) => one.order - other.order)
    .map((entity) => entity.name)
}
