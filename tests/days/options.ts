import { Chance } from './chance.ts'
import type { FaultKind } from './faults.ts'

/** What a simulated day is made of; printed with a failure, so that the very same day can be run again. */
export interface WorldOptions {
  readonly seed: number
  /** From four in the morning until the evening's dough is shaped. The shop's hours and its bakes are as short. */
  readonly dayMinutes: number
  /** Nobody does anything and nothing goes wrong any more after so many seconds; null: until the next day has begun. */
  readonly untilSecond: number | null
  /** From 2 to 5: the desk, benches, counter and wall. */
  readonly screens: number
  /** How long a person at a screen waits between two acts, on average. */
  readonly actEveryMs: number
  readonly delayMsMax: number
  /** Of messages. */
  readonly lostPermille: number
  readonly latePermille: number
  readonly repeatPermille: number
  /** Of appends that go wrong, the machine stopping among it. */
  readonly appendFaultPermille: number
  /** Cuts, stalls, reloads, naps, clocks being set, full stores, being shown out: of each second, for each screen. */
  readonly devicePermille: number
  /** Of acts that somebody at another screen taps at the same moment. */
  readonly samePermille: number
  /** Of seconds: what happens to the server or its disk from outside. */
  readonly serverPermille: number
  /** Whether the server's clock is among it: then nobody can say how far a screen may be off. */
  readonly setsServerClock: boolean
  readonly without: readonly FaultKind[]
  /** On a real file instead of a simulated disk. */
  readonly isOnFile: boolean
  readonly bug: Bug
}

/** Bugs planted to see that the checks would find real ones. */
export type Bug = (typeof BUGS)[number]
export const BUGS = [
  'none',
  'a screen loses an entry',
  'a page forgets its queue',
  'a screen trusts its clock',
  'a screen lets people tap what it cannot keep and does not say so',
  'the server forgets its answers',
  'the server miscounts a sale',
  'the disk forgets the last append',
  'the copy lacks its last entry',
  'a copy put back is on the old course',
] as const

export const DAY_MINUTES = 70
/** A day for a quick run: as many things happen in it a minute, so that there are fewer of each. */
export const SHORT_DAY_MINUTES = 12

/** A day of its own kind for each seed: a slow network, a failing disk, restless devices, in all mixtures. */
export function drawnOptions(seed: number, dayMinutes: number): WorldOptions {
  const chance = new Chance(seed).part('options')
  // In a shorter day, more goes wrong in a minute.
  const often = (DAY_MINUTES / dayMinutes) ** 0.7
  return {
    seed,
    dayMinutes,
    untilSecond: null,
    screens: chance.oneOf([3, 4, 5, 5]),
    actEveryMs: chance.oneOf([45_000, 70_000]),
    delayMsMax: chance.oneOf([10, 120, 1_500]),
    lostPermille: chance.oneOf([0, 1, 3]),
    latePermille: chance.oneOf([0, 2, 10]),
    repeatPermille: chance.oneOf([0, 5, 30]),
    appendFaultPermille: chance.oneOf([4, 15, 45]),
    devicePermille: chance.oneOf([0.5, 1.5, 3]) * often,
    samePermille: chance.oneOf([30, 200]),
    serverPermille: chance.oneOf([0.5, 1.5]) * often,
    setsServerClock: chance.permille(250),
    without: [],
    isOnFile: false,
    bug: 'none',
  }
}

/** A day on which nothing goes wrong. */
export function calmOptions(seed: number, dayMinutes: number): WorldOptions {
  return {
    ...drawnOptions(seed, dayMinutes),
    screens: 5,
    lostPermille: 0,
    latePermille: 0,
    repeatPermille: 0,
    appendFaultPermille: 0,
    devicePermille: 0,
    samePermille: 0,
    serverPermille: 0,
    setsServerClock: false,
  }
}
