import type { Entry } from '../../shared-core/day/events.ts'
import type { DeviceId } from '../../shared-core/ids.ts'
import type { CommandAnswer, DeviceHello, ScreenPresence, ToScreen } from '../../shared-core/live/protocol.ts'
import type { RoomParts, ScreenLink } from './room-parts.ts'

/** Devices that left make room for new ones: a list for people, not a record. */
const SEEN_MAX = 36
/** Who was last seen on another day is no longer looked for. */
const SEEN_MS_MAX = 20 * 3_600_000

/** Which screens are linked, and the one message that each gets in a turn. */
export class Attendance {
  readonly #parts: Pick<RoomParts, 'broadcast' | 'now'>
  readonly #devices = new Map<ScreenLink, DeviceHello>()
  readonly #seen = new Map<DeviceId, ScreenPresence>()
  #isPresenceNew = false

  constructor(parts: Pick<RoomParts, 'broadcast' | 'now'>) {
    this.#parts = parts
  }

  join(link: ScreenLink, device: DeviceHello): void {
    this.#devices.set(link, device)
    this.#see(device, true)
  }

  leave(link: ScreenLink): void {
    const device = this.#devices.get(link)
    if (device === undefined) return
    this.#devices.delete(link)
    // The same device may be linked again already, while its old link is found lost only now.
    const linked = [...this.#devices.values()].some((other) => other.deviceId === device.deviceId)
    this.#see(device, linked)
  }

  deviceOf(link: ScreenLink): DeviceHello | null {
    return this.#devices.get(link) ?? null
  }

  /** What a device calls itself, while it is remembered. */
  nameOf(deviceId: DeviceId): string | null {
    return this.#seen.get(deviceId)?.device.name ?? null
  }

  sendAll(message: ToScreen): void {
    this.#parts.broadcast(new Set(this.#devices.keys()), message)
  }

  /** Entries to all; a screen that asked something gets its answers in the same message. */
  sendTurn(entries: readonly Entry[], answersOf: ReadonlyMap<ScreenLink, readonly CommandAnswer[]>): void {
    for (const [link, answers] of answersOf) link.send({ type: 'turn', entries, answers })
    if (entries.length === 0) return
    const others = new Set([...this.#devices.keys()].filter((link) => !answersOf.has(link)))
    this.#parts.broadcast(others, { type: 'turn', entries, answers: [] })
  }

  /** Those linked, and those of today that have left, with when they were last seen. */
  presence(): Extract<ToScreen, { type: 'screens' }> {
    const fromMs = this.#parts.now() - SEEN_MS_MAX
    for (const [id, one] of this.#seen) if (!one.connected && one.seenAtMs < fromMs) this.#seen.delete(id)
    return { type: 'screens', screens: [...this.#seen.values()] }
  }

  tellPresence(): void {
    if (!this.#isPresenceNew) return
    this.#isPresenceNew = false
    this.sendAll(this.presence())
  }

  closeAll(): void {
    for (const link of [...this.#devices.keys()]) link.close()
  }

  #see(device: DeviceHello, connected: boolean): void {
    this.#seen.delete(device.deviceId)
    // The same tablet after its store was cleared: another id, but people know it by its name.
    for (const [id, one] of this.#seen) if (!one.connected && one.device.name === device.name) this.#seen.delete(id)
    this.#seen.set(device.deviceId, { device, connected, seenAtMs: this.#parts.now() })
    for (const [id, one] of this.#seen) {
      if (this.#seen.size <= SEEN_MAX) break
      if (!one.connected) this.#seen.delete(id)
    }
    this.#isPresenceNew = true
  }
}
