import type { VarietyId } from '../../../shared-core/ids.ts'
import type { PlanFigures } from '../../../shared-core/live/plan.ts'
import type { WhatIfChange } from '../../../shared-core/plan/what-if.ts'
import type { Hours, Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { durationMs } from '../../../shared-core/units.ts'
import { signedPieces } from '../../words/desk-day-sheet.ts'
import type { WhatIfKind, WhatIfWords } from '../../words/desk-plan.ts'
import { money } from '../../words/money.ts'

export const WHAT_IFS: readonly WhatIfKind[] = ['shelf', 'kettle', 'boards', 'opening', 'changeover', 'order', 'people']

/** Those that mean something in a shop: where nobody said who is there, people are no limit. */
export function askable({ baking }: Pick<Shop, 'baking'>, hours: Hours | null): readonly WhatIfKind[] {
  const isNone = { people: baking.people.length === 0, changeover: (hours?.changeoverFromMinute ?? null) === null }
  return WHAT_IFS.filter((kind) => !(kind === 'people' || kind === 'changeover') || !isNone[kind])
}

/** What stands in each field until somebody types. */
export function usualAmount(kind: WhatIfKind, cycleSeconds: number): number {
  const usual = {
    shelf: 1,
    kettle: Math.max(10, cycleSeconds - 20),
    boards: 10,
    opening: 30,
    changeover: 15,
    order: 36,
  }
  return kind === 'people' ? 1 : usual[kind]
}

/** Whether a number makes sense for it: nobody opens a day earlier, or boils in no time. */
export function isSensible(kind: WhatIfKind, amount: number): boolean {
  if (!Number.isInteger(amount)) return false
  const [least, most] = BOUNDS[kind]
  return amount >= least && amount <= most && amount !== 0
}

const BOUNDS: { readonly [kind in WhatIfKind]: readonly [least: number, most: number] } = {
  shelf: [1, 1],
  kettle: [1, 3_600],
  boards: [1, 500],
  opening: [5, 240],
  changeover: [-240, 240],
  order: [1, 5_000],
  people: [1, 20],
}

export interface WhatIfRow {
  readonly key: keyof WhatIfWords['rows']
  readonly before: string
  readonly after: string
  readonly difference: string
}

interface Said {
  readonly whatIf: WhatIfWords
  readonly clock: (atMs: number) => string
}

/** The figures of both days under each other; what neither knows is left out. */
export function whatIfRows(before: PlanFigures, after: PlanFigures, { whatIf, clock }: Said): readonly WhatIfRow[] {
  const rows: WhatIfRow[] = [
    {
      key: 'profit',
      before: money(before.profitCents),
      after: money(after.profitCents),
      difference: signedMoney(after.profitCents - before.profitCents),
    },
  ]
  for (const key of ['lost', 'missing', 'left'] as const) {
    if (key === 'missing' && whole(before.missing) === 0 && whole(after.missing) === 0) continue
    const [one, other] = [whole(before[key]), whole(after[key])]
    rows.push({ key, before: `${one}`, after: `${other}`, difference: signedPieces(other - one) })
  }
  if (before.firstKettleAtMs !== null && after.firstKettleAtMs !== null) {
    const minutes = whole((after.firstKettleAtMs - before.firstKettleAtMs) / 60_000)
    const said = { before: clock(before.firstKettleAtMs), after: clock(after.firstKettleAtMs) }
    rows.push({ key: 'firstDip', ...said, difference: `${signedPieces(minutes)} min` })
  }
  if (before.crewMinutes !== null && after.crewMinutes !== null) {
    const by = whole(after.crewMinutes - before.crewMinutes)
    const said = { before: whatIf.hours(before.crewMinutes), after: whatIf.hours(after.crewMinutes) }
    rows.push({ key: 'crew', ...said, difference: `${signedPieces(by)} min` })
  }
  const [age, other] = [whole(before.ageMinutes), whole(after.ageMinutes)]
  rows.push({
    key: 'age',
    before: whatIf.minutes(age),
    after: whatIf.minutes(other),
    difference: `${signedPieces(other - age)} min`,
  })
  return rows
}

function whole(value: number): number {
  return Math.round(value)
}

/** @example signedMoney(-340) // "−3.40" */
export function signedMoney(cents: number): string {
  return cents === 0 ? money(0) : `${cents < 0 ? '−' : '+'}${money(Math.abs(cents))}`
}

interface Typed {
  /** Seconds, pieces, minutes or people, as its kind has it. */
  readonly amount: number
  readonly varietyId: VarietyId
  readonly dueAtMs: EpochMs
}

const MINUTE_MS = 60_000

/** The question as the server takes it. */
export function changeOf(kind: WhatIfKind, { amount, varietyId, dueAtMs }: Typed): WhatIfChange {
  switch (kind) {
    case 'shelf':
      return { kind }
    case 'kettle':
      return { kind, cycleMs: durationMs(amount * 1_000) }
    case 'boards':
      return { kind, more: amount }
    case 'opening':
      return { kind, earlierMs: durationMs(amount * MINUTE_MS) }
    case 'changeover':
      return { kind, byMs: amount * MINUTE_MS }
    case 'order':
      return { kind, dueAtMs, lines: [{ varietyId, pieces: amount }] }
    case 'people':
      return { kind, fewer: amount }
  }
}
