import type { Mix } from '../../../shared-core/dough/mix.ts'
import { leftOf } from '../../../shared-core/dough/mix-left.ts'
import type { DoughId, VarietyId } from '../../../shared-core/ids.ts'
import type { Dough } from '../../../shared-core/shop/shop.ts'
import { milligrams } from '../../../shared-core/shop/weight.ts'
import { shownWeight } from '../../parts/shop-weight.ts'
import { stuffOf } from '../../words/names.ts'
import { doughsOf } from './mix-steps.ts'
import type { RoomParts } from './room-parts.ts'

/** What can be shaped of a mix: a dough of its formula, or a variety that the mixer decided. */
export interface ShapeChoice {
  readonly key: string
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly name: string
  readonly trayPieces: number
  /** As the set-up says; 0 where it does not. */
  readonly pieceMilligrams: number
  readonly details: readonly string[]
  /** Where its pieces go first. */
  readonly stage: 'proof' | 'chill' | 'rack'
  /** What is still to come of it by the plan, no more than the dough that is left gives. */
  readonly toGo: number
}

/** Doughs of the mix's formula, those that it was planned for first. */
export function shapeChoices(mix: Mix, parts: RoomParts): readonly ShapeChoice[] {
  const all = doughsOf(parts.shop, mix).flatMap((dough) =>
    kindsOf(dough, parts).map((varietyId) => shapeChoice(dough, varietyId, mix, parts)),
  )
  return [...all.filter(({ toGo }) => toGo > 0), ...all.filter(({ toGo }) => toGo === 0)]
}

/** A dough of which everything is decided at the mixer and that makes one variety is that variety. */
function kindsOf(dough: Dough, { shop }: RoomParts): readonly (VarietyId | null)[] {
  const ofDough = [...shop.varieties.values()].filter(({ doughId, retired }) => doughId === dough.id && !retired)
  const mixed = ofDough.filter(({ decidedAt }) => decidedAt === 'mixer').map(({ id }) => id)
  return mixed.length > 0 && mixed.length === ofDough.length ? mixed : [null, ...mixed]
}

function shapeChoice(dough: Dough, varietyId: VarietyId | null, mix: Mix, parts: RoomParts): ShapeChoice {
  const { shop, words, state } = parts
  const gives = mix.gives.find(({ doughId }) => doughId === dough.id)
  const pieceMilligrams = dough.pieceWeight === null ? (gives?.pieceMilligrams ?? 0) : milligrams(dough.pieceWeight)
  const planned = gives?.pieces ?? 0
  const made = [...state.batches.values()]
    .filter((batch) => batch.mixId === mix.id && batch.doughId === dough.id)
    .reduce((sum, { pieces }) => sum + pieces, 0)
  const fits = pieceMilligrams === 0 ? planned - made : Math.floor(leftOf(mix) / pieceMilligrams)
  const say = words.room.shape
  const name = stuffOf({ doughId: dough.id, varietyId }, words.names)
  const weight = pieceMilligrams === 0 ? [] : [say.piece(shownWeight(pieceMilligrams, shop.profile.weight))]
  return {
    key: varietyId ?? dough.id,
    doughId: dough.id,
    varietyId,
    name,
    trayPieces: dough.trayPieces,
    pieceMilligrams,
    details: [say.by[dough.shapedBy], ...weight, ...(planned === 0 ? [] : [say.gives(planned, name)])],
    stage: dough.route.includes('proof') ? 'proof' : dough.route.includes('chill') ? 'chill' : 'rack',
    toGo: Math.max(0, Math.min(planned - made, fits)),
  }
}

/**
 * What ending the mix now would book as lost, and which doughs of it the plan still wants: after the last Plain there may
 * be Mini to come.
 * @param shaped pieces of `chosen` that go onto trays with it
 */
export function endsWith(
  mix: Mix,
  {
    all,
    chosen,
    shaped,
  }: { readonly all: readonly ShapeChoice[]; readonly chosen: ShapeChoice | null; readonly shaped: number },
  { shop }: Pick<RoomParts, 'shop'>,
): { readonly lost: string | null; readonly toCome: readonly string[] } {
  const left = leftOf(mix) - shaped * (chosen?.pieceMilligrams ?? 0)
  const toGo = (choice: ShapeChoice) => choice.toGo - (choice.key === chosen?.key ? shaped : 0)
  return {
    lost: left < LEAST_SHOWN_MILLIGRAMS ? null : shownWeight(left, shop.profile.weight),
    toCome: all.filter((choice) => toGo(choice) > 0 && left >= choice.pieceMilligrams).map(({ name }) => name),
  }
}

/** A piece's weight or so clings to the bowl: nobody asks where it went. */
const LEAST_SHOWN_MILLIGRAMS = 100_000

/** Dough that is left, in pieces of the chosen weight where that is known. */
export function leftText(mix: Mix, choice: ShapeChoice | null, { shop, words }: RoomParts): string {
  const left = leftOf(mix)
  const weight = shownWeight(left, shop.profile.weight)
  const say = words.room.shape
  if (choice === null || choice.pieceMilligrams === 0) return say.leftWeight(weight)
  return say.left(Math.floor(left / choice.pieceMilligrams), weight)
}
