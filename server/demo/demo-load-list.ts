import type { LineCommand } from '../../shared-core/day/commands.ts'
import type { Line } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { byVariety } from '../../shared-core/line/contents.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import type { Shelf, Shop, Variety } from '../../shared-core/shop/shop.ts'
import { windowOf } from '../../shared-core/shop/windows.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { bakeAndCoolMinutes, expectedPieces } from './demo-demand.ts'

/**
 * The demo's list of loads for a day, by the rules that a small shop keeps in its head: the shelves are filled in waves,
 * one after the other; each load takes what will be wanted next, by whole boards, and the last ones what must do until
 * close. A typed list, nothing computed: the real plan is another matter.
 */
export interface DemoLoad {
  readonly shelfId: Shelf['id']
  readonly inAtMs: EpochMs
  readonly lines: Extract<LineCommand, { type: 'load' }>['lines']
}

/** From the first load of a wave to the first of the next: a bake, the handling and a breath. */
const WAVE_MINUTES = 30
/** From one shelf's load to the next one's: two or three kettle-fulls. */
const BETWEEN_SHELVES_MINUTES = 4.5
/** The oven is hot; five minutes more for the first pieces. */
const AFTER_OVEN_READY_MINUTES = 5
/** What is baked now must do until the pieces of the next wave are out, and a little longer. */
const COVERS_MINUTES = WAVE_MINUTES + 15
/** The last waves bake for the afternoon: each a third of the way from the usual reach to close. */
const WAVES_FOR_AFTERNOON = 3
/** After the changeover there is no second chance: a twelfth more of the day than is reckoned. */
const AFTERNOON_MORE = 1 / 12
/** A rod looks empty with less; what is over goes into the kitchen or day-old. */
const SHOWN_PIECES = 4
const VARIETIES_A_LOAD = 4
/** A variety is boiled and topped by the dozen at least. */
const LINE_PIECES_MIN = 12
/** With fewer a shelf is not worth its heat: it is filled up with what is wanted next. */
const LOAD_PIECES_MIN = 48

/**
 * @param dayStartMs local midnight
 * @param busy customers against a usual day's; left out: as many
 * @param waveAtMs a wave begins at this instant, and others every `WAVE_MINUTES` before and after
 * @example demoLoadList(shop, { dayStartMs, waveAtMs: epochMs(dayStartMs + 7 * 3_600_000) })[0].inAtMs // 5:00
 */
export function demoLoadList(shop: Shop, { dayStartMs, waveAtMs, busy = 1 }: DayOfWaves): readonly DemoLoad[] {
  const places = placesOf(shop, (waveAtMs - dayStartMs) / 60_000)
  const baked = new Map<VarietyId, number>()
  return places.flatMap(({ shelf, minute, wavesLeft }) => {
    const lines = linesFor(shop, { shelf, minute, wavesLeft, baked, busy })
    for (const { varietyId, pieces } of lines) baked.set(varietyId, (baked.get(varietyId) ?? 0) + pieces)
    return lines.length === 0 ? [] : [{ shelfId: shelf.id, inAtMs: epochMs(dayStartMs + minute * 60_000), lines }]
  })
}

export interface DayOfWaves {
  readonly dayStartMs: number
  readonly waveAtMs: number
  readonly busy?: number
}

interface Place {
  readonly shelf: Shelf
  readonly minute: number
  /** Waves after this one; 0 for the last. */
  readonly wavesLeft: number
}

/** All loads that are out before the changeover, or before close where there is none. */
function placesOf(shop: Shop, waveMinute: number): readonly Place[] {
  const { ovenReadyMinute, changeoverFromMinute, closeMinute } = shop.hours
  const shelves = [...shop.shelves.values()].filter((shelf) => !shelf.retired)
  const longestMinutes = Math.max(...[...shop.varieties.values()].map((one) => bakeMinutes(shop, one)))
  const firstMinute = ovenReadyMinute + AFTER_OVEN_READY_MINUTES
  const lastMinute = (changeoverFromMinute ?? closeMinute) - longestMinutes - shop.oven.handlingMs / 60_000
  const starts: number[] = []
  const before = Math.ceil((firstMinute - waveMinute) / WAVE_MINUTES)
  for (let wave = before; waveMinute + wave * WAVE_MINUTES <= lastMinute; wave += 1) {
    starts.push(waveMinute + wave * WAVE_MINUTES)
  }
  return starts
    .flatMap((start, wave) =>
      shelves.map((shelf, place) => ({
        shelf,
        minute: start + place * BETWEEN_SHELVES_MINUTES,
        wavesLeft: starts.length - 1 - wave,
      })),
    )
    .filter(({ minute }) => minute <= lastMinute)
}

function linesFor(
  shop: Shop,
  {
    shelf,
    minute,
    wavesLeft,
    baked,
    busy,
  }: Place & { readonly baked: ReadonlyMap<VarietyId, number>; readonly busy: number },
): readonly Line[] {
  const wanted = [...shop.varieties.values()]
    .filter((variety) => !variety.retired)
    .map((variety) => ({
      variety,
      pieces: shortOf(shop, variety, { minute, wavesLeft, busy }) - (baked.get(variety.id) ?? 0),
    }))
    .sort((one, other) => other.pieces - one.pieces || (one.variety.id < other.variety.id ? -1 : 1))
  const first = wanted.find(({ variety }) => isSmallest(shop, shelf) || !bakesApart(shop, variety))
  // In the morning no shelf stays empty: the next dozen is baked a little early instead.
  const aheadPieces = wavesLeft < WAVES_FOR_AFTERNOON ? 0 : LINE_PIECES_MIN
  if (first === undefined || first.pieces <= -aheadPieces) return []
  const together = wanted.filter(({ variety }) => bakesWith(shop, first.variety, variety)).slice(0, VARIETIES_A_LOAD)
  const least = bakesApart(shop, first.variety) ? LOAD_PIECES_MIN : LINE_PIECES_MIN
  const lines: Line[] = []
  for (const { variety, pieces } of together) {
    const room = floorToBoards(shop, shelf.pieces - piecesOf(lines))
    const byBoards = Math.min(ceilToBoards(shop, Math.max(pieces, least)), room)
    const isWanted = pieces > 0 || piecesOf(lines) < LOAD_PIECES_MIN
    if (isWanted && byBoards > 0) lines.push({ varietyId: variety.id, pieces: byBoards })
  }
  return lines.sort((one, other) => byVariety(shop, one.varietyId, other.varietyId))
}

/** Pieces of the whole day that must have been loaded by now, this load included. */
function shortOf(
  shop: Shop,
  variety: Variety,
  { minute, wavesLeft, busy }: Omit<Place, 'shelf'> & { readonly busy: number },
): number {
  const { openMinute, closeMinute } = shop.hours
  const usual = minute + bakeAndCoolMinutes(shop, variety) + COVERS_MINUTES
  const afternoon = Math.max(0, WAVES_FOR_AFTERNOON - wavesLeft) / WAVES_FOR_AFTERNOON
  const untilMinute = usual + Math.max(0, closeMinute - usual) * afternoon
  const expected = expectedPieces(shop, variety, { fromMinute: openMinute, toMinute: untilMinute, busy })
  return expected * (1 + AFTERNOON_MORE * afternoon) + SHOWN_PIECES * (1 - afternoon)
}

/** What is done in 16 minutes would burn in a load of 18: such varieties bake apart. */
function bakesWith(shop: Shop, one: Variety, other: Variety): boolean {
  const [a, b] = [one, other].map((variety) => windowOf(shop, 'bake', variety.doughId, variety.id))
  if (a === null || a === undefined || b === null || b === undefined) return true
  return a.targetMs <= b.latestMs && b.targetMs <= a.latestMs
}

/** Done long before, or after, most of what the shop bakes: it gets a load of its own, on the smallest shelf. */
function bakesApart(shop: Shop, one: Variety): boolean {
  const all = [...shop.varieties.values()].filter(({ retired }) => !retired)
  return all.filter((other) => bakesWith(shop, one, other)).length * 2 < all.length
}

function isSmallest(shop: Shop, { pieces }: Shelf): boolean {
  return [...shop.shelves.values()].every((shelf) => shelf.retired || shelf.pieces >= pieces)
}

function bakeMinutes(shop: Shop, { doughId, id }: Variety): number {
  return (windowOf(shop, 'bake', doughId, id)?.targetMs ?? 0) / 60_000
}

function ceilToBoards(shop: Shop, pieces: number): number {
  return Math.ceil(pieces / shop.boards.pieces) * shop.boards.pieces
}

function floorToBoards(shop: Shop, pieces: number): number {
  return Math.floor(pieces / shop.boards.pieces) * shop.boards.pieces
}
