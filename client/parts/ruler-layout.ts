import { textWidthPx } from './text-width.ts'

/**
 * Where the labels of the day's ruler go. Two lines of text stand above the ruler; a label is pushed sideways within
 * reach of its mark, else up to the second line, else left out and counted, so that no two ever touch. What matters
 * most is placed first: the caller's order is the order of importance.
 */
export interface WantedLabel {
  readonly key: string
  readonly text: string
  /** The mark it belongs to, in pixels from the left. */
  readonly markX: number
  /** How much is lost when it is left out. */
  readonly weight: number
  /** Tries the top line before the line next to the ruler. */
  readonly prefersTop?: boolean | undefined
}

export interface PlacedLabel extends WantedLabel {
  readonly leftX: number
  readonly widthPx: number
  /** 0 is the line next to the ruler, 1 the line above it. */
  readonly line: 0 | 1
}

export interface LabelLayout {
  readonly placed: readonly PlacedLabel[]
  readonly hidden: readonly WantedLabel[]
}

/** Between two labels, and between a label and another mark's leader, in parts of the font size. */
const GAP = 0.5

export interface LabelRoom {
  /** Of the whole ruler: no label leaves it. */
  readonly widthPx: number
  readonly fontPx: number
  /** Lines of text above the ruler, 1 or 2. */
  readonly lines: 1 | 2
  /** Kept free at the right end of the top line, for the count of what is hidden. 0 when left out. */
  readonly reservedPx?: number | undefined
  /** To which side of their marks labels are pushed first. The middle when left out. */
  readonly lean?: Lean | undefined
}

export type Lean = 'middle' | 'left' | 'right'

/** @param labels most important first */
export function layOutLabels(
  labels: readonly WantedLabel[],
  { widthPx, fontPx, lines, reservedPx = 0, lean = 'middle' }: LabelRoom,
): LabelLayout {
  const placed: PlacedLabel[] = []
  const hidden: WantedLabel[] = []
  const room = { widthPx, gapPx: GAP * fontPx, topLine: lines - 1, reservedPx, lean }
  for (const label of labels) {
    const place = findPlace(label, textWidthPx(label.text, fontPx), placed, room)
    if (place === undefined) hidden.push(label)
    else placed.push(place)
  }
  return { placed, hidden }
}

interface Room {
  readonly widthPx: number
  readonly gapPx: number
  readonly topLine: number
  readonly reservedPx: number
  readonly lean: Lean
}

const RULER_FIRST = [0, 1] as const
const TOP_FIRST = [1, 0] as const

function findPlace(label: WantedLabel, width: number, placed: readonly PlacedLabel[], room: Room) {
  for (const line of label.prefersTop === true ? TOP_FIRST : RULER_FIRST) {
    if (line > room.topLine) continue
    const farthest = room.widthPx - width - (line === room.topLine ? room.reservedPx : 0)
    for (const leftX of wishes(label.markX, width, room)) {
      if (leftX < 0 || leftX > farthest) continue
      const place: PlacedLabel = { ...label, leftX, widthPx: width, line }
      if (placed.every((other) => goTogether(place, other, room.gapPx))) return place
    }
  }
  return undefined
}

/** Parts of a label that may stand left of its mark, tried in turn. */
const LEANS: Readonly<Record<Lean, readonly number[]>> = {
  middle: [0.5, 0.35, 0.65, 0.2, 0.8, 0.07, 0.93, 0, 1],
  left: [1, 0.93, 0.8, 0.65, 0.5, 0.35, 0.2, 0.07, 0],
  right: [0, 0.07, 0.2, 0.35, 0.5, 0.65, 0.8, 0.93, 1],
}

/** Left ends that keep the label over its mark; at the ruler's ends, as far in as it must be. */
function wishes(markX: number, width: number, room: Room): number[] {
  const leaning = LEANS[room.lean].map((part) => markX - width * part)
  if (markX < width / 2) return [0, ...leaning]
  return markX > room.widthPx - width / 2 ? [room.widthPx - width, ...leaning] : leaning
}

/** Two labels in one line keep apart; a label in the lower line also keeps off the leader of one above it. */
function goTogether(one: PlacedLabel, other: PlacedLabel, gapPx: number): boolean {
  if (one.line === other.line) return apart(one, other.leftX, other.leftX + other.widthPx, gapPx)
  const [lower, upper] = one.line === 0 ? [one, other] : [other, one]
  return apart(lower, upper.markX, upper.markX, gapPx)
}

function apart(label: PlacedLabel, fromX: number, toX: number, gapPx: number): boolean {
  return label.leftX + label.widthPx + gapPx <= fromX || toX + gapPx <= label.leftX
}
