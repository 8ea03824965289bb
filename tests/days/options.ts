import { Chance } from './chance.ts'

/** What a simulated day is made of; printed with a failure, so that the very same day can be run again. */
export interface WorldOptions {
  readonly seed: number
  readonly minutes: number
  /** How long a person at a screen waits between two acts, on average. */
  readonly actEveryMs: number
  readonly delayMsMax: number
  /** Messages that arrive twice. */
  readonly repeatPermille: number
  /** Appends that go wrong, the machine stopping among it. */
  readonly appendFaultPermille: number
  /** Cuts, stalls, reloads, naps and clocks being set: each second, for each screen. */
  readonly devicePermille: number
  /** Acts that somebody at another screen taps at the same moment. */
  readonly samePermille: number
  /** The server's own clock being set: each second. */
  readonly serverClockPermille: number
  /** New versions of the pages: each second. */
  readonly newBuildPermille: number
  readonly bug: Bug
}

/** Bugs planted to see that the checks would find real ones. */
export type Bug = (typeof BUGS)[number]
export const BUGS = [
  'none',
  'a screen loses an entry',
  'the server forgets its answers',
  'the disk forgets the last append',
  'a screen trusts its clock',
] as const

/** A day of its own kind for each seed: a slow network, a failing disk, restless devices, in all mixtures. */
export function drawnOptions(seed: number, minutes: number): WorldOptions {
  const chance = new Chance(seed ^ 0x5eed)
  return {
    seed,
    minutes,
    actEveryMs: chance.oneOf([6_000, 14_000]),
    delayMsMax: chance.oneOf([10, 120, 1_500]),
    repeatPermille: chance.oneOf([0, 10, 50]),
    appendFaultPermille: chance.oneOf([5, 40, 120]),
    devicePermille: chance.oneOf([3, 12, 25]),
    samePermille: chance.oneOf([50, 300]),
    serverClockPermille: chance.oneOf([0, 0, 2]),
    newBuildPermille: chance.oneOf([0, 1, 2]),
    bug: 'none',
  }
}

/** A day on which nothing goes wrong. */
export function calmOptions(seed: number, minutes: number): WorldOptions {
  return {
    ...drawnOptions(seed, minutes),
    repeatPermille: 0,
    appendFaultPermille: 0,
    devicePermille: 0,
    samePermille: 0,
    serverClockPermille: 0,
    newBuildPermille: 0,
  }
}
