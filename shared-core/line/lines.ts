import type { Decision } from '../day/decision.ts'
import { refuse } from '../day/decision.ts'
import type { Line } from '../day/state.ts'
import type { DoughId, VarietyId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import { must } from '../support.ts'
import type { Want } from './gather.ts'

/** Why lines cannot be taken; null when they can. Retired varieties may still be baked and sold off. */
export function lineRefusal(shop: Shop, lines: readonly Line[]): Decision | null {
  const unknown = lines.find((line) => !shop.varieties.has(line.varietyId))
  return unknown === undefined ? null : refuse('unknown-variety', { varietyId: unknown.varietyId })
}

/** Why pieces of a dough, or of one of its varieties, cannot be made; null when they can. */
export function doughRefusal(shop: Shop, dough: DoughId, variety: VarietyId | null): Decision | null {
  const known = shop.doughs.get(dough)
  if (known === undefined) return refuse('unknown-dough', { doughId: dough })
  if (known.retired) return refuse('retired', { doughId: dough })
  if (variety === null) return null
  const knownVariety = shop.varieties.get(variety)
  if (knownVariety === undefined || knownVariety.doughId !== dough)
    return refuse('unknown-variety', { varietyId: variety })
  return knownVariety.retired ? refuse('retired', { varietyId: variety }) : null
}

export function wantOf(shop: Shop, { varietyId, pieces }: Line): Want {
  return { doughId: must(shop.varieties, varietyId).doughId, varietyId, pieces }
}

export function piecesOf(lines: readonly { readonly pieces: number }[]): number {
  return lines.reduce((sum, line) => sum + line.pieces, 0)
}
