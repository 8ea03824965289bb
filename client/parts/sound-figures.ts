import type { RoomActKind } from '../../shared-core/dough/room-acts.ts'
import type { LineAct } from '../../shared-core/shop/shop.ts'

/**
 * A figure is a few notes by which a kind of act is known without looking: kitchen timers that all sound alike are what
 * the board replaces. Figures differ in rhythm and in the way their pitch goes, so that one of the two is enough.
 * All notes lie between 500 and 3000 Hz: the ear is keenest there, and fans and boilers are loud below.
 */
export interface Note {
  readonly hz: number
  readonly fromMs: number
  readonly lengthMs: number
}
export type Figure = readonly Note[]

/** What has a figure: the acts of the line, those of the dough room that come to the minute, and those of the kitchen. */
export type Sounding = LineAct | RoomSound | KitchenSound
/** The second menu's oven, and portions out of the cooler for it. */
export type KitchenSound = 'ovenIn' | 'ovenTurn' | 'ovenOut' | 'portionPull'
export type RoomSound = Extract<RoomActKind, 'mixIns' | 'mixerOff' | 'restOver' | 'fold' | 'chill'>

export const FIGURE_HZ_MIN = 500
export const FIGURE_HZ_MAX = 3000
/** No figure is longer, so that none keeps a more urgent one waiting for long. */
export const FIGURE_MS_MAX = 2_400

/** Two quick rises: hurry, it is in boiling water. */
const LIFT = notes('784:110 1047:110 1568:180 -:90 784:110 1047:110 1568:260')
/** There and back, there and back: turn it over. */
const FLIP = notes('1319:170 880:170 1319:170 880:330')
/** One long fall: it comes out and down. */
const OUT = notes('1760:420 1175:640')
/** Three even knocks at the door. */
const LOAD = notes('659:140 -:140 659:140 -:140 659:260')
/** A slow step up: out of the cooler. */
const PULL = notes('587:380 -:120 698:560')
/** Short and long: in it goes. */
const DIP = notes('1397:80 -:60 932:480')
/** Four quick patters: piece by piece onto boards. */
const BOARD = notes('1047:60 -:60 1175:60 -:60 1047:60 -:60 1175:120')

/** Two soft pairs, low: something goes into the bowl. */
const MIX_INS = notes('523:150 622:150 -:170 523:150 622:330')
/** One note cut off, and again lower: the motor runs down. */
const MIXER_OFF = notes('1480:520 -:60 988:120 -:60 740:120 -:60 554:420')
/** One long even note: it has rested. */
const REST_OVER = notes('831:1100')
/** Up and over and down: one fold. */
const FOLD = notes('622:230 932:230 1244:230 932:230 622:460')
/** High and long, then falling twice: into the cold. */
const CHILL = notes('2093:560 -:110 1661:240 1319:560')

/** Two knocks and a step up: in they go. */
const OVEN_IN = notes('740:110 -:90 740:110 -:90 1109:300')
/** Round and back to where it began, quickly: turn it. */
const OVEN_TURN = notes('988:120 1319:120 1661:120 1319:120 988:240')
/** Three steps down from high up: small and hot, out. */
const OVEN_OUT = notes('2217:150 -:50 1480:150 -:50 988:420')
/** Two slow steps up: out of the cooler for the afternoon. */
const PORTION_PULL = notes('554:320 -:140 659:320 -:140 784:480')

const FIGURES: Readonly<Record<Sounding, Figure>> = {
  pull: PULL,
  dip: DIP,
  lift: LIFT,
  board: BOARD,
  load: LOAD,
  flip: FLIP,
  out: OUT,
  mixIns: MIX_INS,
  mixerOff: MIXER_OFF,
  restOver: REST_OVER,
  fold: FOLD,
  chill: CHILL,
  ovenIn: OVEN_IN,
  ovenTurn: OVEN_TURN,
  ovenOut: OVEN_OUT,
  portionPull: PORTION_PULL,
}

/** A fast shake high up, which says late; after it comes the figure of the act that is late. */
const LATE = notes('2349:70 1976:70 2349:70 1976:70 2349:70 1976:70 2349:150 -:150')

/** The figure of an act; of a late one, the shake and then its own. */
export function figureOf(act: Sounding, isLate: boolean): Figure {
  const own = FIGURES[act]
  if (!isLate) return own
  const shakeMs = lengthMs(LATE) + 150
  return [...LATE, ...own.map((note) => ({ ...note, fromMs: note.fromMs + shakeMs }))]
}

/** From the first note's beginning to the last one's end. */
export function lengthMs(figure: Figure): number {
  return figure.reduce((end, note) => Math.max(end, note.fromMs + note.lengthMs), 0)
}

/** @example notes('784:110 -:90 1568:260') // a note of 784 Hz for 110 ms, 90 ms of silence, one of 1568 Hz for 260 ms */
function notes(text: string): Figure {
  const figure: Note[] = []
  let fromMs = 0
  for (const word of text.split(' ')) {
    const [hz = '', length = ''] = word.split(':')
    if (hz !== '-') figure.push({ hz: Number(hz), fromMs, lengthMs: Number(length) })
    fromMs += Number(length)
  }
  return figure
}
