import type { Mix, MixStage, SheetLine } from '../../../shared-core/dough/mix.ts'
import { mixUntil } from '../../../shared-core/dough/mix-stages.ts'
import { formulaId, ingredientId, mixId } from '../../../shared-core/ids.ts'
import type { Formula } from '../../../shared-core/shop/formula.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { spanMs } from '../../../shared-core/units.ts'
import { at } from '../support/make.ts'

/** A plain dough: 12 min of mixing, 7 min of rest (common practice, no source), no bulk and no mix-ins. */
export function formula(parts: Partial<Omit<Formula, 'id'>> & { readonly id?: string } = {}): Formula {
  return {
    name: 'Plain',
    order: 1,
    lines: [{ ingredientId: ingredientId('flour'), percent: 100_000, at: 'start' }],
    preparations: [],
    lossPercent: 0,
    bakeLossPercent: 0,
    doughAt: { thousandths: 76_000, unit: 'F' },
    friction: { thousandths: 30_000, unit: 'F' },
    mixMs: spanMs(12, 'min'),
    mixInMs: null,
    restMs: spanMs(7, 'min'),
    bulk: null,
    strength: 0,
    daysAhead: 1,
    decideByMinute: 720,
    retired: false,
    ...parts,
    id: formulaId(parts.id ?? 'plain'),
  }
}

/** A mix of 10 kg of dough in a stage since an instant; its pieces are boiled on the day after the test day. */
export function mix(
  stage: MixStage,
  sinceMs: EpochMs,
  parts: Partial<Omit<Mix, 'id'>> & { readonly id?: string } = {},
): Mix {
  const of = parts.formula ?? formula()
  return {
    formula: of,
    bakeDate: '2026-11-25',
    order: 1,
    startAtMs: null,
    stage,
    sinceMs,
    until: mixUntil(of, stage, sinceMs),
    mixedAtMs: stage === 'planned' ? null : at('5:00'),
    mixer: 'Mixer',
    lines: [sheetLine('flour')],
    gives: [],
    temps: { room: null, flour: null, preferment: null, tap: null, water: null, dough: null },
    water: null,
    folds: 0,
    builds: [],
    shapedMilligrams: 0,
    lostMilligrams: 0,
    spoiltMilligrams: 0,
    unexplainedMilligrams: 0,
    ...parts,
    id: mixId(parts.id ?? 'm1'),
  }
}

export function sheetLine(key: string, parts: Partial<SheetLine> = {}): SheetLine {
  const of = { key, ingredientId: ingredientId(key), preparationId: null, at: 'start', milligrams: 10_000_000 } as const
  return { ...of, weighedAtMs: null, ...parts }
}
