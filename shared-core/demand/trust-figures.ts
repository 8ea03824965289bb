import type { Accuracy, AccuracyOf, Held, Off, ShareJson } from '../live/trust.ts'
import { isoWeekday } from '../shop/hours.ts'
import { pinball, wape } from './accuracy.ts'
import type { Judged, JudgedRest, Said } from './backtest.ts'
import { wilsonOfGroups } from './share-interval.ts'

/** A forecast and what came, of one variety or of several together. */
export interface Row {
  readonly date: string
  readonly asked: number
  readonly isEstimated: boolean
  /** The one number that is held against what came. */
  readonly point: number
  readonly lastWeek: number | null
  readonly lastFour: number | null
  /** Null for sums: varieties share their good and bad days, so their ranges do not add up. */
  readonly said: Said | null
}

/** A variety's median is its best guess: half of the days ask for more, half for less. */
export function rowOf({ date, asked, isEstimated, said, simple }: Judged | JudgedRest): Row {
  const { lastWeek, lastFour } = simple ?? { lastWeek: null, lastFour: null }
  return { date, asked, isEstimated, point: said.q50, lastWeek, lastFour, said }
}

/**
 * What several varieties of a day ask for together. Their means add up, their medians do not. Those for which the simple
 * ways have no number are left out of all three, so that like is held against like.
 */
export function summedByDay(judged: readonly Judged[]): Row[] {
  const rows = new Map<string, Row>()
  for (const { date, asked, isEstimated, said, simple } of judged) {
    if (simple === null) continue
    const row = rows.get(date) ?? { date, asked: 0, isEstimated: false, point: 0, lastWeek: 0, lastFour: 0, said: null }
    rows.set(date, {
      ...row,
      asked: row.asked + asked,
      isEstimated: row.isEstimated || isEstimated,
      point: row.point + said.mean,
      lastWeek: (row.lastWeek ?? 0) + simple.lastWeek,
      lastFour: (row.lastFour ?? 0) + simple.lastFour,
    })
  }
  return [...rows.values()]
}

/** How good forecasts were. */
export function accuracyOf(rows: readonly Row[]): Accuracy {
  const sold = rows.filter(({ isEstimated }) => !isEstimated)
  const saids = rows.flatMap(({ asked, said }) => (said === null ? [] : [{ asked, said }]))
  const losses = saids.flatMap(({ asked, said }) => [
    pinball(asked, said.q50, 0.5),
    pinball(asked, said.q80, 0.8),
    pinball(asked, said.q90, 0.9),
  ])
  return {
    rows: rows.length,
    estimated: rows.length - sold.length,
    asked: mean(rows.map(({ asked }) => asked)) ?? 0,
    off: offOf(rows),
    offNotSoldOut: offOf(sold),
    wape: wape(
      rows.map(({ asked }) => asked),
      rows.map(({ point }) => point),
    ),
    mase: null,
    pinball: mean(losses),
    held: saids.length === 0 ? null : heldOf(rows),
  }
}

/** The same for each key of some forecasts, in the order of the keys. */
export function accuracyBy<One extends Judged | JudgedRest>(
  judged: readonly One[],
  keyOf: (one: One) => string,
  rowsOf: (some: readonly One[]) => readonly Row[] = (some) => some.map(rowOf),
): AccuracyOf[] {
  const groups = new Map<string, One[]>()
  for (const one of judged) {
    const key = keyOf(one)
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [one])
    else group.push(one)
  }
  return [...groups]
    .map(([id, some]) => ({ id, ...accuracyOf(rowsOf(some)) }))
    .sort((one, other) => (one.id < other.id ? -1 : 1))
}

/** @example weekdayKey({ date: '2026-11-26' }) // '4' */
export function weekdayKey({ date }: Pick<Judged, 'date'>): string {
  return String(isoWeekday(date))
}

/** Where both simple ways have a number too. */
function offOf(rows: readonly Row[]): Off | null {
  const errors = rows.flatMap(({ asked, point, lastWeek, lastFour }) =>
    lastWeek === null || lastFour === null
      ? []
      : [{ asked, board: dist(point, asked), lastWeek: dist(lastWeek, asked), lastFour: dist(lastFour, asked) }],
  )
  if (errors.length === 0) return null
  const of = (key: 'asked' | 'board' | 'lastWeek' | 'lastFour') => mean(errors.map((error) => error[key])) ?? 0
  return {
    rows: errors.length,
    asked: of('asked'),
    board: of('board'),
    lastWeek: of('lastWeek'),
    lastFour: of('lastFour'),
  }
}

function heldOf(rows: readonly Row[]): Held {
  return {
    inside: shareOf(
      rows,
      ({ q10, q90 }, asked) => q10 <= asked && asked <= q90,
      ({ inside }) => inside,
    ),
    likely: shareOf(
      rows,
      ({ q50 }, asked) => asked <= q50,
      ({ holds }) => holds.q50,
    ),
    careful: shareOf(
      rows,
      ({ q80 }, asked) => asked <= q80,
      ({ holds }) => holds.q80,
    ),
    plenty: shareOf(
      rows,
      ({ q90 }, asked) => asked <= q90,
      ({ holds }) => holds.q90,
    ),
  }
}

/** All varieties of a day share its luck, so that days are the trials that count. */
function shareOf(
  rows: readonly Row[],
  isHit: (said: Said, asked: number) => boolean,
  expectedOf: (said: Said) => number,
): ShareJson {
  const days = new Map<string, { hits: number; of: number }>()
  let expected = 0
  for (const { date, asked, said } of rows) {
    if (said === null) continue
    const day = days.get(date) ?? { hits: 0, of: 0 }
    days.set(date, { hits: day.hits + (isHit(said, asked) ? 1 : 0), of: day.of + 1 })
    expected += expectedOf(said)
  }
  return { ...wilsonOfGroups([...days.values()]), expected }
}

export function mean(values: readonly number[]): number | null {
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length
}

function dist(one: number, other: number): number {
  return Math.abs(one - other)
}
