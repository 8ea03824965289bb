import type { DividerFigures } from '../../../shared-core/dough/divider.ts'
import { dividerFigures } from '../../../shared-core/dough/divider.ts'
import { expectedBaked, packageCheck } from '../../../shared-core/dough/package-weight.ts'
import type { DoughId } from '../../../shared-core/ids.ts'
import type { Dough } from '../../../shared-core/shop/shop.ts'
import { milligrams } from '../../../shared-core/shop/weight.ts'
import { shownWeight } from '../../parts/shop-weight.ts'
import type { RoomParts } from './room-parts.ts'

/** Doughs whose pieces have a weight to check. */
export function weighedDoughs({ shop }: RoomParts): readonly Dough[] {
  return [...shop.doughs.values()]
    .filter(({ retired, pieceWeight }) => !retired && pieceWeight !== null)
    .sort((one, other) => one.order - other.order || (one.id < other.id ? -1 : 1))
}

/** What the weighed pieces of a dough say, in words; empty while none were weighed. */
export function dividerTexts(doughId: DoughId, parts: RoomParts): readonly string[] {
  const { state, shop, words } = parts
  const say = words.room.divider
  const checks = state.checks.get(doughId)
  const figures = checks === undefined ? null : dividerFigures(checks)
  if (checks === undefined || figures === null) return []
  const weight = (value: number) => shownWeight(Math.round(Math.abs(value)), shop.profile.weight)
  const { offMilligrams, spreadMilligrams: spread } = figures
  const drift = driftOf(figures)
  return [
    say.mean(weight(offMilligrams), offMilligrams > 0),
    ...(spread === null ? [] : [say.spread(weight(spread))]),
    ...(drift === null ? [] : [say.drift(weight(drift), drift > 0)]),
    ...figures.codes.map((code) => say.code(code)),
    ...labelTexts(
      doughId,
      checks.samples.flatMap((sample) => sample.milligrams),
      parts,
    ),
  ]
}

/** A drift that chance alone makes is not told. */
function driftOf({ codes, driftMilligramsPerHour }: DividerFigures): number | null {
  return codes.includes('risingWeight') || codes.includes('fallingWeight') ? driftMilligramsPerHour : null
}

/** Where the shop sells by labelled weight: what the dough pieces should come to when they are baked. */
function labelTexts(doughId: DoughId, dough: readonly number[], { shop, words }: RoomParts): readonly string[] {
  const found = shop.doughs.get(doughId)
  const formula = found?.formulaId == null ? undefined : shop.formulas.get(found.formulaId)
  if (found?.labelWeight == null || formula === undefined) return []
  const label = milligrams(found.labelWeight)
  const { verdict } = packageCheck(label, expectedBaked(formula, 0, dough))
  const say = words.room.divider
  return [say.verdict(verdict, shownWeight(label, shop.profile.weight)), say.office]
}
