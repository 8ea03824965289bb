import { assertAccounted } from '../../shared-core/day/account.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import type { Command } from '../../shared-core/day/commands.ts'
import type { Decision } from '../../shared-core/day/decide.ts'
import { decide } from '../../shared-core/day/decide.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { State } from '../../shared-core/day/state.ts'
import { forkState } from '../../shared-core/day/state-json.ts'
import { commandId } from '../../shared-core/ids.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { mayDo } from '../devices/permissions.ts'
import { localDate, localInstant } from '../live/shop-clock.ts'
import type { WrittenDetails } from '../orders/details-book.ts'
import type { DetailsPlace } from '../orders/put-down.ts'
import { putDown } from '../orders/put-down.ts'
import type { Who } from './demo-shop.ts'
import { DEMO_DEVICES } from './demo-shop.ts'
import type { LocalDay, Move } from './scene.ts'
import { localDay } from './scene.ts'

/** Commands of one device are numbered; six places of base 36 never run over into another length. */
const NUMBER_PLACES = 6
const NOON_MINUTE = 720

/** Numbers what the demo's people tap, each device for itself, and makes commands of it. */
export class DemoTaps {
  readonly #idPrefix: string
  readonly #made = new Map<Who, number>()

  /** @param idPrefix small letters and digits, another one for every run: ids are never given twice */
  constructor(idPrefix: string) {
    this.#idPrefix = idPrefix
  }

  command({ who, act, confirmed }: Move, tappedAtMs: EpochMs): Command {
    const deviceSeq = (this.#made.get(who) ?? 0) + 1
    this.#made.set(who, deviceSeq)
    const id = commandId(`${this.#idPrefix}${who}${deviceSeq.toString(36).padStart(NUMBER_PLACES, '0')}`)
    const head = { id, deviceSeq, tappedAtMs }
    return confirmed === undefined ? { ...head, ...act } : { ...head, confirmed, ...act }
  }
}

/** What was played, to be gone on from or served. */
export interface PlayedDays {
  readonly state: State
  readonly entries: readonly Entry[]
  readonly details: readonly WrittenDetails[]
}

function keyOf({ id, version }: WrittenDetails): string {
  return `${id} ${version}`
}

/** A shop that is played through, each move decided and folded at its own instant as the server would have. */
export class Played {
  readonly state: State
  readonly entries: Entry[]
  /** Whom orders are for, by order and writing: no part of the journal. */
  readonly details: Map<string, WrittenDetails>
  readonly #zone: string
  readonly #taps: DemoTaps
  #day: LocalDay | null = null

  /** @param after what was played before, by others; it is not changed */
  constructor({ shop, idPrefix, after }: { shop: Shop; idPrefix: string; after?: PlayedDays }) {
    this.state = after === undefined ? emptyState() : forkState(after.state)
    this.entries = [...(after?.entries ?? [])]
    this.details = new Map((after?.details ?? []).map((one) => [keyOf(one), one]))
    this.#zone = shop.profile.zone
    this.#taps = new DemoTaps(idPrefix)
  }

  /** @returns what the rules said; what they refuse leaves no trace */
  take(move: Move & { readonly atMs: EpochMs }): Decision {
    const { state, entries } = this
    const nowMs = move.atMs
    const device = DEMO_DEVICES[move.who]
    const command = this.#taps.command(move, nowMs)
    if (!mayDo(device.role, command.type)) {
      return { kind: 'refused', refusal: { code: 'not-your-role', params: { role: device.role, type: command.type } } }
    }
    this.#day = localDay(this.#zone, nowMs, this.#day)
    const noonOf = (label: string) => localInstant(this.#zone, label, NOON_MINUTE)
    const context = { nowMs, deviceId: device.deviceId, localDate: this.#day.date, noonOf }
    const decision = decide(state, command, context)
    if (decision.kind !== 'taken') return decision
    const entry: Entry = {
      seq: state.seq + 1,
      commandId: command.id,
      deviceId: device.deviceId,
      recordedAtMs: nowMs,
      told: decision.told,
      events: decision.events,
    }
    applyEntry(state, entry)
    assertAccounted(state)
    entries.push(entry)
    const date = (atMs: EpochMs) => localDate(this.#zone, atMs)
    putDown({ place: this.#place, command, entry, localDate: date })
    return decision
  }

  readonly #place: DetailsPlace = {
    write: (one) => void this.details.set(keyOf(one), one),
    setDay: (id, day) => {
      for (const [key, one] of this.details) if (one.id === id) this.details.set(key, { ...one, day })
    },
  }
}
