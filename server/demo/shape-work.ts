import type { Mix, MixPieces } from '../../shared-core/dough/mix.ts'
import { leftOf } from '../../shared-core/dough/mix-left.ts'
import { must } from '../../shared-core/support.ts'
import { doughForDay } from './dough-for-day.ts'
import { drawFor } from './draw.ts'
import type { RoomScene } from './mix-work.ts'
import type { Move } from './scene.ts'

const HOUR_MS = 3_600_000
/** A tap for so many trays: nobody taps each of them with dough on the hands. */
const TRAYS_A_TAP = 4
/** Pieces that somebody puts on the scale, and when. */
const CHECKED_PIECES = 6
const CHECK_AFTER_MS = 70_000
/** What a piece may be off at the divider, and by hand, in parts of its weight. */
const OFF = { divider: 0.025, hand: 0.04 } as const
const RACKS = 'ABCDEF'

/** The next trays of a mix on the bench, doughs in the order in which it gives them; first some pieces are weighed. */
export function nextShaping(mix: Mix, scene: RoomScene): Move | null {
  const now = nowShaping(mix)
  if (now === null) {
    // All pieces are there: what is in bowl and divider is lost.
    return {
      key: `end:${mix.id}`,
      who: 'crew',
      atMs: mix.sinceMs,
      act: { type: 'endMix', mixId: mix.id, left: 'lost' },
    }
  }
  return checking(mix, now.of, scene) ?? shaping(mix, now, scene)
}

interface Now {
  readonly of: MixPieces
  readonly leftPieces: number
  readonly shapedPieces: number
  readonly isLastDough: boolean
}

/** Which dough it is, by the weight that was shaped. */
function nowShaping({ gives, shapedMilligrams }: Mix): Now | null {
  let rest = shapedMilligrams
  let shapedPieces = 0
  for (const [index, of] of gives.entries()) {
    const { pieces, pieceMilligrams } = of
    if (pieceMilligrams === 0) continue
    const shaped = Math.min(pieces, Math.round(rest / pieceMilligrams))
    shapedPieces += shaped
    const isLastDough = index === gives.length - 1
    if (shaped < pieces) return { of, leftPieces: pieces - shaped, shapedPieces, isLastDough }
    rest -= pieces * pieceMilligrams
  }
  return null
}

function shaping(mix: Mix, { of, leftPieces, shapedPieces, isLastDough }: Now, scene: RoomScene): Move {
  const { shop, seed } = scene
  const { trayPieces, shapedBy } = must(shop.doughs, of.doughId)
  const pieces = Math.min(leftPieces, trayPieces * TRAYS_A_TAP)
  const room = shop.doughRoom
  const anHour =
    (shapedBy === 'divider' ? room?.dividerPiecesPerHour : null) ??
    (room === null ? HAND_PIECES_PER_HOUR : room.handPiecesPerHour * room.rollers)
  const key = `shape:${mix.id}:${shapedPieces}`
  const draw = drawFor(seed, key)
  const isLast = isLastDough && pieces === leftPieces && leftOf(mix) >= pieces * of.pieceMilligrams
  const place = `${RACKS[mix.order % RACKS.length]}${1 + Math.floor(shapedPieces / trayPieces)}`
  return {
    key,
    who: 'crew',
    atMs: mix.sinceMs + ((shapedPieces + pieces) / anHour) * HOUR_MS + draw.between(10_000, 60_000),
    act: {
      type: 'shape',
      mixId: mix.id,
      place,
      doughId: of.doughId,
      varietyId: doughForDay(shop).find(({ doughId }) => doughId === of.doughId)?.varietyId ?? null,
      pieces,
      stage: 'proof',
      ...(isLast ? { isLast } : {}),
    },
  }
}
const HAND_PIECES_PER_HOUR = 400

function checking(mix: Mix, of: MixPieces, { state, shop, seed }: RoomScene): Move | null {
  const samples = state.checks.get(of.doughId)?.samples ?? []
  if (of.pieceMilligrams === 0 || samples.some((sample) => sample.mixId === mix.id)) return null
  const key = `weighed:${mix.id}:${of.doughId}`
  const draw = drawFor(seed, key)
  const off = OFF[shop.doughs.get(of.doughId)?.shapedBy ?? 'hand']
  // A divider that drifts is off the same way all mix long.
  const drift = draw.between(-off, off) / 2
  const weights = Array.from({ length: CHECKED_PIECES }, () => {
    const grams = (of.pieceMilligrams / 1_000) * (1 + drift + draw.between(-off, off) / 2)
    return { thousandths: Math.round(grams) * 1_000, unit: 'g' } as const
  })
  const atMs = mix.sinceMs + CHECK_AFTER_MS
  const act = { type: 'weighPieces', doughId: of.doughId, mixId: mix.id, weights } as const
  return { key, who: 'crew', once: true, atMs, act }
}
