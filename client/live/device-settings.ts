import type { StationId } from '../../shared-core/ids.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import type { Language } from '../../shared-core/shop/shop.ts'

/** What this device is and how it shows things; kept on the device, one set for each role that it is opened in. */
export interface DeviceSettings {
  readonly name: string
  readonly role: Role
  /** The station whose acts this screen taps; null: all of them. */
  readonly stationId: StationId | null
  /** Null: as the shop's set-up says. */
  readonly language: Language | null
  readonly diagonalInches: number
  readonly viewingMetres: number
  /** 0–100. */
  readonly volumePercent: number
  /** Minutes after local midnight between which nothing sounds; may run over midnight. Null: always. */
  readonly quiet: { readonly fromMinute: number; readonly toMinute: number } | null
  /** Pedals and one-key pads act as keyboards: `KeyboardEvent.code` → the station whose next act the key does. */
  readonly keys: Readonly<Record<string, StationId>>
  /** 80–160; 100 is what the screen's size asks for. */
  readonly textPercent: number
}
