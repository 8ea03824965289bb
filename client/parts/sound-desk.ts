import type { Figure, Sounding } from './sound-figures.ts'
import { figureOf, lengthMs } from './sound-figures.ts'

/**
 * Decides which one figure sounds now. Pure: the screen asks at every tick and after every change, and hands back what
 * it got. One figure at a time; the most urgent first; each repeats with growing rests until its act is done, quieted
 * ("coming") or gone. Sound that nobody answers soon becomes sound that nobody hears; and while one act rests, the next
 * one is heard, so that none drowns the others.
 */
export interface SoundingAct {
  /** The same on every screen and as long as it is the same act. */
  readonly key: string
  readonly act: Sounding
  /** When it is due. It is silent before. */
  readonly atMs: number
  readonly isLate: boolean
}

export interface SoundNow {
  /** Most urgent first: the same order in which the wall names them. */
  readonly acts: readonly SoundingAct[]
  readonly nowMs: number
  /** By act key, until when somebody is on the way to it. */
  readonly quietedUntilMs: ReadonlyMap<string, number>
  /** Whether the device's quiet hours hold at this moment, see `isQuietHour`. */
  readonly isQuiet: boolean
  /** Of the device, 0 to 1. */
  readonly volume: number
}

export interface SoundDesk {
  readonly playing: { readonly key: string; readonly isLate: boolean; readonly untilMs: number } | null
  readonly rests: ReadonlyMap<string, Rest>
}

interface Rest {
  readonly times: number
  readonly isLate: boolean
  readonly untilMs: number
}

export interface SoundAnswer {
  readonly desk: SoundDesk
  /** What was playing must stop at this instant. */
  readonly stop: boolean
  readonly play: { readonly key: string; readonly figure: Figure; readonly volume: number } | null
}

export const SILENT_DESK: SoundDesk = { playing: null, rests: new Map() }

/** From one playing's end to the next of the same act: three close ones, then calmer. Common practice, no source. */
export const REST_MS = { first: 5_000, later: 15_000, closeTimes: 3 } as const
/** Silence between two figures, so that they stay two. */
export const BETWEEN_MS = 400

/**
 * What to stop and what to play at `nowMs`. An act that was done is no longer among `acts`: it falls silent at once.
 * @returns the desk to hand in next time
 */
export function soundNow(desk: SoundDesk, now: SoundNow): SoundAnswer {
  const audible = now.isQuiet || !(now.volume > 0) ? [] : now.acts.filter((act) => isAudible(act, now))
  const rests = keptRests(desk, now)
  const { playing } = desk
  if (playing !== null && now.nowMs < playing.untilMs) {
    if (audible.some(({ key }) => key === playing.key)) return { desk: { playing, rests }, stop: false, play: null }
    return start({ playing: null, rests }, audible, now, true)
  }
  const pausing = playing !== null && now.nowMs < playing.untilMs + BETWEEN_MS
  return pausing
    ? { desk: { playing, rests }, stop: false, play: null }
    : start({ playing: null, rests }, audible, now, false)
}

function start(desk: SoundDesk, audible: readonly SoundingAct[], now: SoundNow, stop: boolean): SoundAnswer {
  const next = audible.find((act) => isRested(act, desk.rests, now.nowMs))
  if (next === undefined) return { desk, stop, play: null }
  const { key, act, isLate } = next
  const figure = figureOf(act, isLate)
  const untilMs = now.nowMs + lengthMs(figure)
  const before = desk.rests.get(key)
  const times = before !== undefined && before.isLate === isLate ? before.times + 1 : 1
  const restMs = times < REST_MS.closeTimes ? REST_MS.first : REST_MS.later
  const rests = new Map(desk.rests).set(key, { times, isLate, untilMs: untilMs + restMs })
  return {
    desk: { playing: { key, isLate, untilMs }, rests },
    stop,
    play: { key, figure, volume: Math.min(1, now.volume) },
  }
}

function isAudible({ key, atMs }: SoundingAct, { nowMs, quietedUntilMs }: SoundNow): boolean {
  return atMs <= nowMs && (quietedUntilMs.get(key) ?? 0) <= nowMs
}

/** An act that has just become late speaks up at once: that is news. */
function isRested({ key, isLate }: SoundingAct, rests: ReadonlyMap<string, Rest>, nowMs: number): boolean {
  const rest = rests.get(key)
  return rest === undefined || rest.untilMs <= nowMs || (isLate && !rest.isLate)
}

/** Forgets acts that are gone, so that a week of acts does not pile up. */
function keptRests({ rests }: SoundDesk, { acts }: SoundNow): ReadonlyMap<string, Rest> {
  const present = new Set(acts.map(({ key }) => key))
  return new Map([...rests].filter(([key]) => present.has(key)))
}

/**
 * Whether quiet hours hold at a minute of the local day; they may pass midnight.
 * @param hours minutes after midnight, half-open; null: none. Equal ends mean none.
 * @example isQuietHour(23 * 60, { fromMinute: 1320, toMinute: 240 }) // true
 */
export function isQuietHour(
  minute: number,
  hours: { readonly fromMinute: number; readonly toMinute: number } | null,
): boolean {
  if (hours === null) return false
  const { fromMinute, toMinute } = hours
  if (fromMinute <= toMinute) return fromMinute <= minute && minute < toMinute
  return fromMinute <= minute || minute < toMinute
}
