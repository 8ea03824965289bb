import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import type { DeviceId } from '../../shared-core/ids.ts'
import type { DeviceHello, FromScreen } from '../../shared-core/live/protocol.ts'
import { PROTOCOL_VERSION } from '../../shared-core/live/protocol.ts'
import type { Confirmed } from './confirmed.ts'
import { unnamed } from './unnamed.ts'

interface HelloParts {
  readonly buildId: string
  readonly deviceId: DeviceId
  readonly device: Omit<DeviceHello, 'deviceId'>
  readonly isRenamed: boolean
  readonly confirmed: Confirmed
  readonly wantsSnapshot: boolean
}

/** The first word on a contact: who asks, in which form, and what it knows already. */
export function hello({ buildId, confirmed, wantsSnapshot, isRenamed, ...who }: HelloParts): FromScreen {
  const { state, journalId, course } = confirmed
  return {
    type: 'hello',
    protocol: PROTOCOL_VERSION,
    foldVersion: FOLD_VERSION,
    buildId,
    device: named(who),
    isRenamed,
    afterSeq: wantsSnapshot || state === null ? null : state.seq,
    journalId,
    course,
  }
}

function named({ deviceId, device }: Pick<HelloParts, 'deviceId' | 'device'>): DeviceHello {
  return { ...device, deviceId, name: device.name === '' ? unnamed(device.role, deviceId) : device.name }
}
