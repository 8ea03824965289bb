import type { Act } from '../../shared-core/day/commands.ts'
import type { Batch, State } from '../../shared-core/day/state.ts'
import type { DoughId, VarietyId } from '../../shared-core/ids.ts'
import type { ShopClock } from '../../shared-core/live/protocol.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { instantOfMinute } from '../live/clock-text.ts'

/** Where trays can stand before the kettle. */
export const TRAY_STAGES = ['proof', 'chill', 'rack'] as const
export type TrayStage = (typeof TRAY_STAGES)[number]

/** What a tray can hold: plain dough, or what the mixer has decided already. */
export interface TrayStuff {
  readonly key: string
  readonly name: string
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly trayPieces: number
  /** The stages of its route before the kettle. */
  readonly stages: readonly TrayStage[]
}

/** All that can be carried in or shaped, in the order of the set-up; a dough that the mixer decides stands by variety. */
export function trayStuff(shop: Shop): readonly TrayStuff[] {
  const doughs = [...shop.doughs.values()].filter((dough) => !dough.retired).sort((a, b) => a.order - b.order)
  return doughs.flatMap((dough) => {
    const { id: doughId, name, trayPieces } = dough
    const stages = TRAY_STAGES.filter((stage) => dough.route.includes(stage))
    const varieties = [...shop.varieties.values()].filter((one) => one.doughId === doughId && !one.retired)
    const mixed = varieties.filter((variety) => variety.decidedAt === 'mixer').sort((a, b) => a.order - b.order)
    const plain: TrayStuff = { key: doughId, name, doughId, varietyId: null, trayPieces, stages }
    const made = mixed.map((variety): TrayStuff => {
      return { ...plain, key: `${doughId} ${variety.id}`, name: variety.name, varietyId: variety.id }
    })
    return varieties.length > 0 && mixed.length === varieties.length ? made : [plain, ...made]
  })
}

/** What was entered. */
export interface TrayForm {
  readonly how: 'carriedIn' | 'shaped'
  readonly stage: TrayStage
  readonly number: number
  readonly unit: 'pieces' | 'trays'
  /** Days before today, or null: not known. */
  readonly daysAgo: number | null
  /** HH:MM */
  readonly clock: string
}

/** What the server takes at once. */
const PIECES_MAX = 5_000

export type TrayRead =
  | { readonly ok: true; readonly act: Act; readonly pieces: number }
  | { readonly ok: false; readonly why: 'number' | 'later' }

/** The act that was entered, or what is wrong with it. Without a time, carried-in trays count from now. */
export function readTrays(
  form: TrayForm,
  { doughId, varietyId, trayPieces }: TrayStuff,
  { clock, nowMs }: { readonly clock: ShopClock | null; readonly nowMs: EpochMs },
): TrayRead {
  const { stage, number } = form
  const pieces = number * (form.unit === 'trays' ? trayPieces : 1)
  if (!Number.isInteger(pieces) || pieces < 1 || pieces > PIECES_MAX) return { ok: false, why: 'number' }
  if (form.how === 'shaped') return { ok: true, pieces, act: { type: 'shape', doughId, varietyId, pieces, stage } }
  const sinceMs = sinceOf(form, clock, nowMs)
  if (sinceMs !== null && sinceMs > nowMs) return { ok: false, why: 'later' }
  return { ok: true, pieces, act: { type: 'carryIn', doughId, varietyId, pieces, stage, sinceMs } }
}

function sinceOf({ daysAgo, clock: text }: TrayForm, clock: ShopClock | null, nowMs: EpochMs): EpochMs | null {
  const [hours, minutes] = text.split(':').map(Number)
  if (daysAgo === null || clock === null || hours === undefined || minutes === undefined) return null
  return instantOfMinute(clock, hours * 60 + minutes - daysAgo * 1_440, nowMs)
}

/** What stands before the kettle, stage by stage, the oldest first. */
export function standingTrays(state: State): readonly Batch[] {
  return TRAY_STAGES.flatMap((stage) =>
    [...state.batches.values()]
      .filter((batch) => batch.stage === stage)
      .sort((one, other) => one.sinceMs - other.sinceMs || (one.id < other.id ? -1 : 1)),
  )
}
