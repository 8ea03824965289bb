import { textWidthPx } from './text-width.ts'

/** The ring's drawing is 100 units wide; all lengths here are in them. */
export const RING = { centre: 50, middleRadius: 39, thickness: 22 } as const
const HOLE_RADIUS = RING.middleRadius - RING.thickness / 2

/** Half a degree: finer steps would repaint a ring of minutes every second for a change that nobody sees. */
const STEPS = 720

/**
 * What is left of a countdown as an arc along the ring's middle. It empties clockwise: the gap opens at twelve o'clock
 * and its edge moves as a clock's hand does.
 * @param fraction what is left, 1 full to 0 empty; outside and not-a-number count as the nearer end (NaN: 0)
 * @returns `full`, `empty`, or the `d` of an SVG path in steps of half a degree
 */
export function ringArc(fraction: number): 'full' | 'empty' | string {
  const left = Math.round(Math.min(1, Math.max(0, Number.isNaN(fraction) ? 0 : fraction)) * STEPS)
  if (left === STEPS) return 'full'
  if (left === 0) return 'empty'
  const from = onRing(1 - left / STEPS)
  const to = onRing(1)
  const large = left > STEPS / 2 ? 1 : 0
  return `M${from} A${RING.middleRadius} ${RING.middleRadius} 0 ${large} 1 ${to}`
}

function onRing(turn: number): string {
  const angle = turn * 2 * Math.PI
  const x = RING.centre + RING.middleRadius * Math.sin(angle)
  const y = RING.centre - RING.middleRadius * Math.cos(angle)
  return `${x.toFixed(2)} ${y.toFixed(2)}`
}

export interface RingLabel {
  readonly lines: readonly string[]
  /** In the ring's units: of a ring 200 px wide, 20 is 40 px. */
  readonly fontSize: number
  /** Baseline of each line. */
  readonly baselines: readonly number[]
}

const CAP = 0.668
const LINE = 0.98
const LINES_MAX = 3
/** Air between the letters' corners and the hole's edge. */
const HOLE_USED = 0.93
/** What another line must gain in size: "22 s" reads better in one, "late / 3 min" better in two. */
const BREAK_GAIN = 1.15

/**
 * Sets a label into the hole as large as it goes, in one to three lines. A number of one digit gets the room of two,
 * so that the size does not jump from 10 to 9.
 * @example fitRingLabel('12 min').lines // ['12', 'min']
 */
export function fitRingLabel(text: string): RingLabel {
  const words = text.split(/\s+/).filter((word) => word !== '')
  let best = setIn([words.join(' ')])
  for (const lines of breaks(words)) {
    const tried = setIn(lines)
    if (tried.fontSize > best.fontSize * BREAK_GAIN ** (lines.length - best.lines.length)) best = tried
  }
  return best
}

function setIn(lines: readonly string[]): RingLabel {
  const block = (lines.length - 1) * LINE + CAP
  let reach = 0.01
  for (const [index, line] of lines.entries()) {
    const top = index * LINE - block / 2
    const halfWidth = textWidthPx(withTwoDigits(line), 1, 'strong') / 2
    reach = Math.max(reach, Math.hypot(halfWidth, Math.max(Math.abs(top), Math.abs(top + CAP))))
  }
  const fontSize = (HOLE_RADIUS * HOLE_USED) / reach
  const baselines = lines.map((_, index) => RING.centre + (index * LINE - block / 2 + CAP) * fontSize)
  return { lines, fontSize, baselines }
}

function withTwoDigits(line: string): string {
  return line.replace(/\d+/g, (digits) => digits.padStart(2, '0'))
}

/** All ways of breaking words into two or three lines; a number stays before its unit unless it starts its own line. */
function breaks(words: readonly string[]): string[][] {
  const ways: string[][] = []
  for (let first = 1; first < words.length; first++) {
    ways.push([joined(words, 0, first), joined(words, first)])
    for (let second = first + 1; second < words.length; second++) {
      ways.push([joined(words, 0, first), joined(words, first, second), joined(words, second)])
    }
  }
  return ways.filter((lines) => lines.length <= LINES_MAX && lines.slice(0, -1).every((line) => !/\s\d+$/.test(line)))
}

function joined(words: readonly string[], from: number, to?: number): string {
  return words.slice(from, to).join(' ')
}
