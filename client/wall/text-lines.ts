import type { Weight } from '../parts/text-width.ts'
import { textWidthPx } from '../parts/text-width.ts'

/**
 * Text set into lines before it is painted, so that nothing on the wall wraps or is cut by chance: what does not fit is
 * left out by whole lines, and only a name that is wider than its place loses its end.
 */
export interface LineRoom {
  readonly roomPx: number
  readonly fontPx: number
  readonly weight?: Weight | undefined
}

/** What is measured is a table without kerning; a hundredth is kept for the difference. */
const SLACK = 1.01

export function fits(text: string, { roomPx, fontPx, weight }: LineRoom): boolean {
  return textWidthPx(text, fontPx, weight) * SLACK <= roomPx
}

export function widthOf(text: string, fontPx: number, weight?: Weight): number {
  return Math.ceil(textWidthPx(text, fontPx, weight) * SLACK)
}

/** Breaks a text at its spaces into lines that fit; a word that is wider than a line loses its end. */
export function wrapText(text: string, room: LineRoom): readonly string[] {
  const lines: string[] = []
  let line = ''
  for (const word of wordsOf(text)) {
    const longer = line === '' ? word : `${line} ${word}`
    if (fits(longer, room)) line = longer
    else {
      if (line !== '') lines.push(line)
      line = shortened(word, room)
    }
  }
  return line === '' ? lines : [...lines, line]
}

/** The text, or as much of it as fits with an ellipsis at its end. For names only: never for acts or numbers. */
export function shortened(text: string, room: LineRoom): string {
  if (fits(text, room)) return text
  const letters = [...text]
  while (letters.length > 1) {
    letters.pop()
    const short = `${letters.join('').trimEnd()}…`
    if (fits(short, room)) return short
  }
  return '…'
}

/** Words that lead on: "and", its Spanish sisters, and numbers; alone at a line's end they say nothing. */
const LEADS_ON = /^(\d+|and|y|e|&)$/

function wordsOf(text: string): readonly string[] {
  const words: string[] = []
  let lead = ''
  for (const word of text.split(' ').filter((part) => part !== '')) {
    const joined = lead === '' ? word : `${lead} ${word}`
    lead = LEADS_ON.test(word) ? joined : ''
    if (lead === '') words.push(joined)
  }
  return lead === '' ? words : [...words, lead]
}

/**
 * A name in one line, or in two that are as even as can be.
 * @returns one or two lines; where neither fits, one that is shortened
 */
export function nameLines(name: string, room: LineRoom, linesMax: 1 | 2): readonly string[] {
  if (fits(name, room) || linesMax === 1) return [shortened(name, room)]
  const words = name.split(' ')
  const ways = words.slice(1).map((_, at) => [words.slice(0, at + 1).join(' '), words.slice(at + 1).join(' ')])
  const widest = (lines: readonly string[]) => Math.max(...lines.map((line) => widthOf(line, room.fontPx, room.weight)))
  const best = ways.reduce<readonly string[] | null>(
    (least, way) => (least === null || widest(way) < widest(least) ? way : least),
    null,
  )
  return best !== null && widest(best) <= room.roomPx ? best : [shortened(name, room)]
}
