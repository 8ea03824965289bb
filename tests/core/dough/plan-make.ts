import type { State } from '../../../shared-core/day/state.ts'
import type { Mix } from '../../../shared-core/dough/mix.ts'
import { doughId, formulaId } from '../../../shared-core/ids.ts'
import type { Dough, Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import type { StateParts } from '../support/make.ts'
import { stateWith } from '../support/make.ts'
import { dough, shopWith, table } from '../support/shop.ts'
import { doughRoom, INGREDIENTS, PLAIN_LINES, percents } from './kitchen.ts'
import { formula } from './room-mix.ts'

/** The days around the test day, a Tuesday. */
export const TODAY = '2026-11-24'
export const TOMORROW = '2026-11-25'
export const THURSDAY = '2026-11-26'

/** The test shop's noon: UTC−6 all through the tests' weeks. */
export function noonOf(date: string): EpochMs {
  return epochMs(Date.parse(`${date}T18:00:00Z`))
}

/** A dough of 120 g a piece on trays of 15, mixed by the plain formula. */
export function shapedDough(parts: Partial<Omit<Dough, 'id'>> & { readonly id: string }): Dough {
  return dough({
    formulaId: formulaId('plain'),
    pieceWeight: { thousandths: 120_000, unit: 'g' },
    ...parts,
  })
}

/** Plain and mini are shaped from one formula, rye from its own. */
export function doughShop(parts: Partial<Shop> = {}): Shop {
  return shopWith({
    doughRoom: doughRoom(),
    ingredients: INGREDIENTS,
    doughs: table([
      shapedDough({ id: 'plain', order: 1 }),
      shapedDough({ id: 'mini', order: 2, trayPieces: 24, pieceWeight: { thousandths: 60_000, unit: 'g' } }),
      shapedDough({ id: 'rye', order: 3, formulaId: formulaId('rye') }),
    ]),
    formulas: table([
      formula({ lines: PLAIN_LINES, decideByMinute: 600 }),
      formula({ id: 'rye', order: 2, lines: percents({ flour: 60, rye: 40, water: 55, salt: 2, yeast: 0.6 }) }),
    ]),
    ...parts,
  })
}

export interface PlanParts extends StateParts {
  /** By date, pieces of doughs for the counter. */
  readonly wanted?: { readonly [date: string]: { readonly [dough: string]: number } }
  readonly ordered?: { readonly [date: string]: { readonly [dough: string]: number } }
  readonly mixes?: readonly Mix[]
}

export function planState({ wanted = {}, ordered = {}, ...parts }: PlanParts): State {
  const state = stateWith({ shop: doughShop(), ...parts })
  const add = (date: string, lines: { readonly [dough: string]: number }, field: 'pieces' | 'ordered') => {
    const before = state.wanted.get(date)?.lines ?? []
    const more = Object.entries(lines).map(([id, pieces]) => ({
      doughId: doughId(id),
      varietyId: null,
      pieces: 0,
      ordered: 0,
      [field]: pieces,
    }))
    state.wanted.set(date, { date, lines: [...before, ...more] })
  }
  for (const [date, lines] of Object.entries(wanted)) add(date, lines, 'pieces')
  for (const [date, lines] of Object.entries(ordered)) add(date, lines, 'ordered')
  return state
}
