import type { Request, Response } from 'express'
import type { JoinedDevice } from '../../shared-core/live/devices.ts'
import type { DeviceHello } from '../../shared-core/live/protocol.ts'
import { parseDevice } from '../devices/device.ts'
import { mayOpen } from '../devices/door.ts'
import { askerOf } from './entrance.ts'
import { sendProblem } from './problem.ts'

/**
 * The device that a request says it comes from: X-Device-Id, X-Device-Name, X-Device-Role. In an open shop a script that
 * says nothing is one named "script" with a desk's rights. In a closed one the token says who it is, and the headers
 * choose among what it may be: a desk may act as another screen, and an id that a device made itself is its own.
 * @returns null when it was answered with what is wrong
 */
export function deviceOf(request: Request, response: Response): DeviceHello | null {
  const { door, grant } = askerOf(response)
  const joined = door.deviceOf(grant)
  const device = parseDevice({
    deviceId: request.get('x-device-id') ?? joined?.id ?? 'http',
    name: joined === null ? (request.get('x-device-name') ?? 'script') : joined.name || joined.role,
    role: request.get('x-device-role') ?? joined?.role ?? 'desk',
    stationId: null,
  })
  if (device === null) {
    const detail =
      'X-Device-Id is small letters, digits, "." and "-"; X-Device-Name at most 40 characters; X-Device-Role one of wall, bench, counter, desk.'
    sendProblem(response, { status: 400, title: 'Bad device headers', detail })
    return null
  }
  const refusal = joined === null ? null : notAllowed(joined, device, door.claim(device.deviceId, joined.id))
  if (refusal === null) return device
  door.refused.count('not-its-role', request.socket.remoteAddress)
  sendProblem(response, { status: 403, title: 'Not for this device', detail: refusal })
  return null
}

function notAllowed(joined: JoinedDevice, device: DeviceHello, isItsId: boolean): string | null {
  if (!mayOpen(joined.role, device.role)) {
    return `This device has joined as ${joined.role}, so X-Device-Role is "${joined.role}" or left out.`
  }
  return isItsId
    ? null
    : `X-Device-Id "${device.deviceId}" is another device's. Leave it out, or choose one of your own.`
}
