import type { State } from '../../shared-core/day/state.ts'
import type { Mix, MixStage } from '../../shared-core/dough/mix.ts'
import type { RoomAct } from '../../shared-core/dough/room-acts.ts'
import type { MixId } from '../../shared-core/ids.ts'
import { inOrder } from '../../shared-core/shop/in-order.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { WallDoughWords } from '../words/wall-dough.ts'
import { mixRow, trayRow } from './dough-rows.ts'
import type { Box } from './layout.ts'
import type { RowText } from './oven-row.ts'
import type { SetRows } from './rows-fit.ts'
import { rowsThatFit } from './rows-fit.ts'
import type { Setting } from './view.ts'

/** The dough room across the wall: its mixes, what proofs, and the room in the cooler. */
export interface DoughView {
  readonly mixes: DoughColumn
  readonly trays: DoughColumn
}

export interface DoughColumn {
  readonly box: Box
  readonly heading: string
  /** Right of the heading. */
  readonly note: string
  readonly isTrouble: boolean
  readonly set: SetRows
  /** In place of rows; "" when there are some. */
  readonly nothing: string
}

export interface DoughInput extends Setting {
  readonly state: State
  readonly shop: Shop
  readonly room: readonly RoomAct[]
  readonly dough: WallDoughWords
  readonly box: Box
}

const UNDER_WAY: ReadonlySet<MixStage> = new Set<MixStage>(['mixing', 'rest', 'bulk', 'bench'])
/** What is this near counts as work in the dough room. */
const NEAR_MS = 30 * 60_000
/** The wall has more to say of mixes than of trays. */
const MIXES_SHARE = 0.56

/** Whether somebody works there now, or soon: a mix is under way or should be, or trays go into the cooler. */
export function isRoomBusy({ mixes }: Pick<State, 'mixes'>, room: readonly RoomAct[], nowMs: EpochMs): boolean {
  const isNear = ({ kind, atMs }: RoomAct) => (kind === 'startMix' || kind === 'chill') && atMs - nowMs <= NEAR_MS
  return [...mixes.values()].some(({ stage }) => UNDER_WAY.has(stage)) || room.some(isNear)
}

export function doughView(input: DoughInput): DoughView {
  const { state, shop, box, dough } = input
  const { padPx } = input.layout
  const leftPx = Math.round((box.width - padPx) * MIXES_SHARE)
  const left = { ...box, width: leftPx }
  const right = { ...box, left: box.left + leftPx + padPx, width: box.width - leftPx - padPx }
  const chills = input.room.filter(({ kind }) => kind === 'chill' || kind === 'use')
  const cooler = coolerNote(state, shop, dough)
  const trays = chills.map((act) => trayRow(act, input))
  const proofing = column(trays, right, input)
  return {
    mixes: { ...column(mixRows(input), left, input), heading: dough.mixes, isTrouble: false },
    trays: {
      ...proofing,
      heading: dough.proofing,
      isTrouble: cooler.isTrouble,
      note: [proofing.note, cooler.note].filter((text) => text !== '').join(', '),
      nothing: trays.length === 0 ? dough.nothingProofing : '',
    },
  }
}

interface Row {
  readonly text: RowText
  readonly atMs: EpochMs | null
}

function column(
  rows: readonly Row[],
  box: Box,
  { sizes, wall }: DoughInput,
): Omit<DoughColumn, 'heading' | 'isTrouble'> {
  const texts = rows.map(({ text }) => text)
  const { shown, ...set } = rowsThatFit(
    texts,
    rows.map(({ atMs }) => atMs),
    { box, sizes, wall },
  )
  const hidden = rows.length - shown.length
  return { box, set, note: hidden > 0 ? wall.more(hidden) : '', nothing: '' }
}

/** Those under way as they stand, then the next ones to mix. */
function mixRows(input: DoughInput): readonly Row[] {
  const { state } = input
  const acts = new Map<MixId, RoomAct>()
  // The soonest of a mix counts: a fold before the end of its bulk.
  for (const act of [...input.room].reverse()) if (act.mixId !== null && act.kind !== 'chill') acts.set(act.mixId, act)
  const under = [...state.mixes.values()].filter(({ stage }) => UNDER_WAY.has(stage)).sort(byBegun)
  const planned = [...state.mixes.values()].filter(({ stage, id }) => stage === 'planned' && acts.has(id)).sort(byOrder)
  return [...under, ...planned].map((mix) => mixRow(mix, acts.get(mix.id) ?? null, input))
}

function byBegun(one: Mix, other: Mix): number {
  return (one.mixedAtMs ?? 0) - (other.mixedAtMs ?? 0) || byOrder(one, other)
}

function byOrder(one: Mix, other: Mix): number {
  return one.order - other.order || (one.id < other.id ? -1 : 1)
}

function coolerNote(state: State, shop: Shop, dough: WallDoughWords): Pick<DoughColumn, 'note' | 'isTrouble'> {
  const space = shop.cooler?.trays ?? null
  const trays = inOrder(shop.doughs).reduce((sum, { id, trayPieces }) => {
    const chilled = [...state.batches.values()].filter(({ stage, doughId }) => stage === 'chill' && doughId === id)
    return sum + Math.ceil(chilled.reduce((all, { pieces }) => all + pieces, 0) / trayPieces)
  }, 0)
  if (space !== null && trays > space) return { note: dough.coolerOver(trays - space), isTrouble: true }
  return { note: dough.cooler(trays, space), isTrouble: false }
}
