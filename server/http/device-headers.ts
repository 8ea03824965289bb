import type { Request, Response } from 'express'
import type { DeviceHello } from '../../shared-core/live/protocol.ts'
import { parseDevice } from '../devices/device.ts'
import { sendProblem } from './problem.ts'

/**
 * The device that a request says it comes from: X-Device-Id, X-Device-Name, X-Device-Role. A script that says nothing is
 * one named "script" with a desk's rights.
 * @returns null when it was answered with what is wrong
 */
export function deviceOf(request: Request, response: Response): DeviceHello | null {
  const device = parseDevice({
    deviceId: request.get('x-device-id') ?? 'http',
    name: request.get('x-device-name') ?? 'script',
    role: request.get('x-device-role') ?? 'desk',
    stationId: null,
  })
  if (device === null) {
    const detail =
      'X-Device-Id is small letters, digits, "." and "-"; X-Device-Name at most 40 characters; X-Device-Role one of wall, bench, counter, desk.'
    sendProblem(response, { status: 400, title: 'Bad device headers', detail })
  }
  return device
}
