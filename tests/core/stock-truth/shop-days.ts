import { assertAccounted } from '../../../shared-core/day/account.ts'
import { applyEntry } from '../../../shared-core/day/apply.ts'
import type { Act } from '../../../shared-core/day/commands.ts'
import { decide } from '../../../shared-core/day/decide.ts'
import type { Line, State } from '../../../shared-core/day/state.ts'
import type { VarietyId } from '../../../shared-core/ids.ts'
import { commandId, deviceId, shelfId, varietyId } from '../../../shared-core/ids.ts'
import type { CounterRules } from '../../../shared-core/shop/rules.ts'
import { toCountAtClose } from '../../../shared-core/stock/close.ts'
import { rods } from '../../../shared-core/stock/left.ts'
import { sweepFor } from '../../../shared-core/stock/sweep.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs, spanMs } from '../../../shared-core/units.ts'
import { at, stateWith } from '../support/make.ts'
import { shelf, shopWith, table, variety } from '../support/shop.ts'
import { Chance } from './chance.ts'
import { basket, comeIn, crowdOf, wanted } from './customers.ts'

/**
 * Simulated shops against which the estimate of stock is held. The truth is played piece by piece: customers come by a
 * profile of the day, buy from singles to boxes, and take of what is there. The board hears of it only what such a shop
 * would tell it, through the same commands, rules and fold as any tap; sweeps are made when and where it asks.
 */
export interface ShopKind {
  readonly seed: number
  readonly days: number
  /** Share of the sales that are tapped with their varieties. */
  readonly tapped: number
  /** What becomes of the others: nobody hears of them, or only how many pieces they were. */
  readonly others: 'unseen' | 'unnamed'
  readonly sweeps: boolean
}

/** One rod at one time: what was likely, what the books said, and what was there. */
export interface Look {
  readonly day: number
  readonly minute: number
  readonly kind: 'sweep' | 'between'
  readonly likely: number
  readonly within: number
  readonly books: number
  readonly truth: number
}

export interface Played {
  readonly looks: readonly Look[]
  /** By day. */
  readonly sweeps: readonly number[]
  readonly sweptRods: readonly number[]
  readonly closeRods: readonly number[]
  /** Pieces. */
  readonly sold: readonly number[]
  readonly state: State
}

const KINDS = 28
const OPEN_MINUTE = 360
const CLOSE_MINUTE = 900
const COOL_MINUTES = 15
/** Minutes after opening at which a wave comes out of the oven, and until when it should last. */
const WAVES = [
  [-40, 80],
  [50, 150],
  [120, 240],
  [210, 540],
] as const
const LOOK_EVERY_MINUTES = 20
/** Somebody glances at the board so often. */
const SWEEP_LOOKS_EVERY_MINUTES = 5

export function playShop(kind: ShopKind): Played {
  const days = new ShopDays(kind)
  for (let day = 0; day < kind.days; day += 1) days.play(day)
  assertAccounted(days.state)
  return days
}

class ShopDays implements Played {
  readonly looks: Look[] = []
  readonly sweeps: number[] = []
  readonly sweptRods: number[] = []
  readonly closeRods: number[] = []
  readonly sold: number[] = []
  readonly state: State
  readonly #kind: ShopKind
  readonly #chance: Chance
  readonly #ids: readonly VarietyId[]
  /** How much each variety is liked: a few are asked for ten times as much as the last. */
  readonly #likes: readonly number[]
  #there: number[] = []
  #cooling: { readonly atMinute: number; readonly place: number; readonly pieces: number }[] = []
  #day = 0
  #commands = 0

  constructor(kind: ShopKind) {
    this.#kind = kind
    this.#chance = new Chance(kind.seed * 7919 + 17)
    this.#ids = Array.from({ length: KINDS }, (_none, place) => varietyId(`v${String(place).padStart(2, '0')}`))
    this.#likes = this.#ids.map((_id, place) => (12 / (place + 3)) * this.#chance.between(0.7, 1.3))
    const salesFrom: CounterRules['salesFrom'] = kind.tapped === 0 && kind.others === 'unseen' ? 'sweeps' : 'taps'
    const shop = shopWith({
      varieties: table(this.#ids.map((id, order) => variety({ id, order }))),
      shelves: table([shelf({ id: 's1', pieces: 2_000 })]),
      counter: { salesFrom, sweepEveryMs: spanMs(90, 'min'), dayOldPercent: 50 },
    })
    this.state = stateWith({ shop, day: null, recordedAt: at('0:00') })
  }

  play(day: number): void {
    this.#day = day
    this.#there = this.#ids.map(() => 0)
    this.#cooling = []
    for (const counts of [this.sweeps, this.sweptRods, this.closeRods]) counts.push(0)
    const crowd = crowdOf(this.#chance, this.#likes)
    for (let minute = -60; minute < CLOSE_MINUTE - OPEN_MINUTE; minute += 1) {
      for (const [outMinute, lastsToMinute] of WAVES)
        if (outMinute === minute) this.#bake(minute, outMinute, lastsToMinute)
      this.#cool(minute)
      if (minute < 0) continue
      for (let come = comeIn(this.#chance, crowd, minute); come > 0; come -= 1)
        this.#sell(minute, basket(this.#chance, crowd, this.#there))
      if (this.#kind.sweeps && minute % SWEEP_LOOKS_EVERY_MINUTES === 0) this.#sweep(minute)
      if (minute % LOOK_EVERY_MINUTES === LOOK_EVERY_MINUTES / 2) this.#look(minute, 'between', this.#ids)
    }
    this.#close()
  }

  /** The baker bakes what a usual day wants, more of some by a hunch, by the half-dozen; never by the board's numbers. */
  #bake(minute: number, fromMinute: number, toMinute: number): void {
    const liked = this.#likes.reduce((sum, one) => sum + one, 0)
    const pieces = wanted(fromMinute + COOL_MINUTES, toMinute)
    const lines = this.#ids.flatMap((id, place): readonly Line[] => {
      const wants = ((this.#likes[place] ?? 0) / liked) * pieces * this.#chance.between(0.9, 1.5)
      const baked = Math.round(wants / 6) * 6
      if (baked > 0) this.#cooling.push({ atMinute: minute + COOL_MINUTES, place, pieces: baked })
      return baked === 0 ? [] : [{ varietyId: id, pieces: baked }]
    })
    this.#tap(minute, { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines })
    const [loadId] = this.state.loads.keys()
    if (loadId === undefined) throw new Error('nothing loaded')
    this.#tap(minute, { type: 'out', loadId, from: 'first-side', lines: null })
  }

  #cool(minute: number): void {
    for (const { atMinute, place, pieces } of this.#cooling)
      if (atMinute === minute) this.#there[place] = (this.#there[place] ?? 0) + pieces
  }

  #sell(minute: number, taken: readonly number[]): void {
    const lines = taken.flatMap((pieces, place): readonly Line[] => {
      this.#there[place] = (this.#there[place] ?? 0) - pieces
      const id = this.#ids[place]
      return pieces === 0 || id === undefined ? [] : [{ varietyId: id, pieces }]
    })
    const pieces = taken.reduce((sum, one) => sum + one, 0)
    if (pieces === 0) return
    this.sold[this.#day] = (this.sold[this.#day] ?? 0) + pieces
    if (this.#chance.comes(this.#kind.tapped)) this.#tap(minute, { type: 'sell', lines })
    else if (this.#kind.others === 'unnamed') this.#tap(minute, { type: 'sellUnnamed', pieces })
  }

  #sweep(minute: number): void {
    const { dueAtMs, varietyIds } = sweepFor(this.state, this.#atMs(minute))
    if (dueAtMs === null || this.#atMs(minute) < dueAtMs || varietyIds.length === 0) return
    const counts = varietyIds.map((id) => ({ varietyId: id, pieces: halfDozens(this.#truth(id)) * 6, within: 3 }))
    this.#tap(minute, { type: 'sweep', counts })
    this.sweeps[this.#day] = (this.sweeps[this.#day] ?? 0) + 1
    this.sweptRods[this.#day] = (this.sweptRods[this.#day] ?? 0) + counts.length
    this.#look(minute, 'sweep', varietyIds)
  }

  #look(minute: number, kind: Look['kind'], ids: readonly VarietyId[]): void {
    for (const { varietyId: id, likely, within, forSale } of rods(this.state, this.#atMs(minute))) {
      const truth = this.#truth(id)
      if (!ids.includes(id) || (truth === 0 && forSale === 0)) continue
      this.looks.push({ day: this.#day, minute, kind, likely, within, books: forSale, truth })
    }
  }

  #close(): void {
    const minute = CLOSE_MINUTE - OPEN_MINUTE
    if (this.#kind.sweeps)
      for (const id of toCountAtClose(this.state, this.#atMs(minute))) {
        this.#tap(minute, { type: 'count', varietyId: id, pieces: this.#truth(id) })
        this.closeRods[this.#day] = (this.closeRods[this.#day] ?? 0) + 1
      }
    this.#tap(minute, { type: 'closeDay' })
  }

  #truth(id: VarietyId): number {
    return this.#there[this.#ids.indexOf(id)] ?? 0
  }

  #atMs(minute: number): EpochMs {
    return epochMs(at('6:00', this.#day) + minute * 60_000)
  }

  #tap(minute: number, act: Act): void {
    const nowMs = this.#atMs(minute)
    this.#commands += 1
    const id = commandId(`sim${this.#commands.toString(36).padStart(9, '0')}`)
    const command = { id, deviceSeq: this.#commands, tappedAtMs: nowMs, confirmed: ['far-count'] as const, ...act }
    const localDate = new Date(at('12:00', this.#day)).toISOString().slice(0, 10)
    const context = { nowMs, deviceId: deviceId('counter'), localDate, noonOf: () => at('12:00', this.#day) }
    const decision = decide(this.state, command, context)
    if (decision.kind !== 'taken') throw new Error(`${act.type}: ${JSON.stringify(decision)}`)
    const { told, events } = decision
    const head = { seq: this.state.seq + 1, commandId: id, deviceId: deviceId('counter'), recordedAtMs: nowMs }
    applyEntry(this.state, { ...head, told, events })
  }
}

/** To the nearest; what lies between two is called either. */
function halfDozens(pieces: number): number {
  const below = Math.floor(pieces / 6)
  const rest = pieces - below * 6
  return rest < 3 || (rest === 3 && below % 2 === 0) ? below : below + 1
}
