import { slipOf } from '../day/ruler.ts'
import type { State } from '../day/state.ts'
import { closesAtMinute, hoursOn } from '../shop/hours.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'

export interface KitchenHours {
  /** The second menu bakes from then on, today's slip included; null: the oven does not change over, or nobody knows. */
  readonly secondFromMs: EpochMs | null
  readonly closesAtMs: EpochMs | null
}

const UNKNOWN: KitchenHours = { secondFromMs: null, closesAtMs: null }
const NOON_MINUTE = 720

/** The open day's hours, counted from its noon; both null while no day is open or its noon is not known. */
export function kitchenHours(state: Pick<State, 'shop' | 'day' | 'marks'>): KitchenHours {
  const { shop, day } = state
  if (shop === null || day === null || day.noonMs === null) return UNKNOWN
  const hours = hoursOn(shop, day.label)
  if (hours === null) return UNKNOWN
  const { noonMs } = day
  const at = (minute: number) => epochMs(noonMs + (minute - NOON_MINUTE) * 60_000)
  const { changeoverFromMinute: from, changeoverToMinute: to } = hours
  const secondFromMs = from === null ? null : epochMs(at(Math.max(from, to ?? from)) + slipOf(state))
  return { secondFromMs, closesAtMs: at(closesAtMinute(hours)) }
}
