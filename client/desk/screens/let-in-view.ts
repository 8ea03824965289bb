import type { JoinCode, JoinedDevice } from '../../../shared-core/live/devices.ts'
import type { EpochMs } from '../../../shared-core/units.ts'

/** A code that this desk had made, and who was in by then. */
export interface MadeCode {
  readonly code: JoinCode
  readonly madeAtMs: EpochMs
  readonly before: readonly JoinedDevice[]
}

/** What has become of a code: its device has come, it still holds, or it is over. */
export type LetInView =
  | { readonly kind: 'holds'; readonly fraction: number; readonly leftMs: number }
  | { readonly kind: 'joined'; readonly device: JoinedDevice }
  | { readonly kind: 'over' }

/** Until then the list may be from before the code was made. */
const LIST_DELAY_MS = 5_000

/**
 * A code that is used up is gone from the list, and a device is there that was not, or that was here as another and has
 * asked since: a browser that joins again goes on as the same device.
 */
export function letInView(
  { code, madeAtMs, before }: MadeCode,
  { devices, codes }: { readonly devices: readonly JoinedDevice[]; readonly codes: readonly JoinCode[] },
  nowMs: EpochMs,
): LetInView {
  const isListed = codes.some((one) => one.code === code.code)
  const came = devices.find((device) => device.role === code.role && isNew(device, before, madeAtMs))
  if (!isListed && came !== undefined) return { kind: 'joined', device: came }
  const leftMs = code.expiresAtMs - nowMs
  const holds = leftMs > 0 && (isListed || nowMs - madeAtMs < LIST_DELAY_MS)
  return holds ? { kind: 'holds', fraction: leftMs / (code.expiresAtMs - madeAtMs), leftMs } : { kind: 'over' }
}

function isNew(device: JoinedDevice, before: readonly JoinedDevice[], madeAtMs: EpochMs): boolean {
  const known = before.find(({ id }) => id === device.id)
  if (known === undefined) return device.kind === 'screen'
  return known.role !== device.role && (device.seenAtMs ?? 0) >= madeAtMs
}

/** @example spaced('123456') // '123 456' */
export function spaced(code: string): string {
  return `${code.slice(0, 3)} ${code.slice(3)}`
}

/** The link that a camera reads. The code stands after the hash, which is sent to no server. */
export function joinLink(base: string, code: string): string {
  return `${base.replace(/\/+$/, '')}/#join=${code}`
}
