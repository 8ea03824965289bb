import * as z from 'zod'
import type { Operation, Parameter } from './operation.ts'

const json = (schema: string, description: string) => ({ type: 'application/json', schema, description })
const body = (schema: string, example: unknown) => [{ type: 'application/json', schema, example } as const]

const id: Parameter = {
  name: 'id',
  in: 'path',
  description: 'A device’s id.',
  schema: z.string(),
  example: 'a1b2c3d4e5f60718',
}

/** The examples are of a shop that lets in who has joined; the code and the id are of things that it has then. */
export const DEVICE_OPERATIONS: readonly Operation[] = [
  {
    id: 'getMe',
    method: 'get',
    path: '/api/v1/me',
    summary: 'Who asks, as the server sees it',
    answer: json('Standing', 'Whether the shop is open, and whether this device has joined.'),
  },
  {
    id: 'postJoin',
    method: 'post',
    path: '/api/v1/join',
    summary: 'Joins with a code of six digits, and sets the cookie',
    description:
      'The desk makes codes; the first desk’s stands in the server’s terminal. Each holds once, the desk’s for 10 minutes. 403: no such code now; 429: too many wrong ones.',
    bodies: body('Join', { code: '123456', name: 'Tablet at the oven' }),
    answer: json('Joined', 'Who it is now, and its page.'),
    problems: [409],
    isClosed: true,
  },
  {
    id: 'postLeave',
    method: 'post',
    path: '/api/v1/leave',
    summary: 'The device gives its token back',
    answer: json('Standing', 'Who asks then.'),
    isClosed: true,
  },
  {
    id: 'getDevices',
    method: 'get',
    path: '/api/v1/devices',
    summary: 'Devices that have joined, and codes that are open',
    answer: json('Devices', 'Devices in the order in which they joined, codes newest first; none in an open shop.'),
  },
  {
    id: 'postCode',
    method: 'post',
    path: '/api/v1/devices/codes',
    summary: 'A new code for one device',
    bodies: body('NewCode', { role: 'bench', name: 'Tablet at the oven', stationId: null }),
    answer: json('Code', 'The code.'),
    problems: [409, 422],
    isClosed: true,
  },
  {
    id: 'deleteCode',
    method: 'delete',
    path: '/api/v1/devices/codes/{code}',
    summary: 'Ends a code that nobody has used',
    parameters: [{ name: 'code', in: 'path', description: 'Six digits.', schema: z.string(), example: '123456' }],
    answer: json('Code', 'The code that was.'),
    problems: [404, 409],
    isClosed: true,
  },
  {
    id: 'postToken',
    method: 'post',
    path: '/api/v1/devices/tokens',
    summary: 'A token for a till, a sensor or a script',
    description: 'It is sent with every request: Authorization: Bearer TOKEN.',
    bodies: body('NewToken', { name: 'Till', role: 'counter', days: 365 }),
    answer: json('TokenMade', 'The token, told this once, and its device.'),
    problems: [409],
    isClosed: true,
  },
  {
    id: 'patchDevice',
    method: 'patch',
    path: '/api/v1/devices/{id}',
    summary: 'Another name, role or station; its screen changes at once',
    parameters: [id],
    bodies: body('DeviceChange', { name: 'Wall left', role: 'wall' }),
    answer: json('Device', 'The device as it is now.'),
    problems: [404, 409, 422],
    isClosed: true,
  },
  {
    id: 'deleteDevice',
    method: 'delete',
    path: '/api/v1/devices/{id}',
    summary: 'Shows a device out at once',
    parameters: [id],
    answer: json('Device', 'The device that was.'),
    problems: [404, 409],
    isClosed: true,
  },
  {
    id: 'getRefused',
    method: 'get',
    path: '/api/v1/refused',
    summary: 'What was refused since the start, by kind',
    answer: json('Refused', 'The latest first.'),
  },
]
