import fc from 'fast-check'
import { shownBy } from '../../../server/devices/credentials.ts'
import { parseDevice } from '../../../server/devices/device.ts'
import { rightOf } from '../../../server/devices/route-rights.ts'
import { deviceChangeSchema, joinSchema, newCodeSchema, newTokenSchema } from '../../../server/http/devices-schema.ts'
import { instantOf } from '../../../server/http/instant.ts'
import { wholeNumber } from '../../../server/http/whole-number.ts'
import { isHostOurs, isOriginOurs } from '../../../server/live/admission.ts'
import type { Problem } from '../../../shared-core/shop/problem.ts'
import { epochMs } from '../../../shared-core/units.ts'
import type { Target } from '../fuzz.ts'
import { assertProblems, Find } from '../fuzz.ts'
import { anyText, mutated, textOf } from '../mutate.ts'

const COOKIES = ['boilboard_device=YWJjZGVm; other=1', 'a=b; boilboard_device=%41%zz', 'boilboard_device=""']
const COOKIE_PIECES = ['boilboard_device', '=', ';', '; ', '"', '%', '%41', '%zz', ',', '\t', '__proto__', 'a']
const BEARERS = ['Bearer YWJjZGVm', 'bearer  a.b~c+d/e-_==', 'Basic YTpi']
const HOSTS = ['127.0.0.1:4610', 'localhost', '[::1]:4610', 'shop.local:80']
const HOST_PIECES = [
  '127.0.0.1',
  'localhost',
  '[',
  ']',
  '::1',
  ':',
  '4610',
  '.',
  '@',
  '/',
  '#',
  '?',
  '%2e',
  '.local',
  '\\',
  '-',
]
const PATHS = ['/api/v1/days/2026-11-24/figures', '/api/v1/devices/codes/123456', '/api/health', '/wall']
const PATH_PIECES = [
  '/api',
  '/v1',
  '/state',
  '/days',
  '/',
  '//',
  '..',
  '%2f',
  '%2e',
  '%',
  ';',
  '?',
  '#',
  'API',
  '/api/v1/devices',
]
const TIMES = ['2026-11-24T08:05:00-06:00', '8:05', '2026-11-24', '08:05:30', '2026-W48-2', '2026-330']
const TIME_PIECES = [
  '2026',
  '-',
  '11',
  '24',
  'T',
  ':',
  '8',
  '05',
  'Z',
  '+',
  'W',
  '.',
  '999999999',
  '-06:00',
  ' ',
  '24:00',
]
const NUMBERS = ['12', '1796000000000', '0', '00012', '9007199254740993', '1e3', '-1', '٣']

const DEVICE = { deviceId: 'bench-1', name: 'Bench', role: 'bench', stationId: null }
const JOINS = [
  { code: '123 456', name: 'Tablet' },
  { role: 'bench', name: 'Till', stationId: 'kettle', days: 30 },
]

/** Who somebody says they are, and the small texts in addresses and headers. */
export function doorTargets(): readonly Target[] {
  return [
    text('cookie', textOf(COOKIE_PIECES, COOKIES), (cookie) =>
      shownBy({ cookie })?.token === undefined ? 'nothing' : 'shown',
    ),
    text('bearer', textOf(['Bearer', ' ', '=', '-', '.', 'A'], BEARERS), (authorization) => {
      const shown = shownBy({ authorization })
      if (shown === null) throw new Find('a header that is there shows something')
      return shown.token === '' ? 'nobody’s' : 'shown'
    }),
    text('host', textOf(HOST_PIECES, HOSTS), (host) => {
      const isOurs = isHostOurs(host, { names: [] })
      isOriginOurs(`http://${host}`, host)
      return isOurs ? 'ours' : 'foreign'
    }),
    text('path', textOf(PATH_PIECES, PATHS), (path) => {
      // Whatever is read as the API must be held for somebody: only pages are for all.
      if (rightOf('GET', path) === null && path.toLowerCase().startsWith('/api')) throw new Find('held for nobody')
      return rightOf('GET', path) === null ? 'page' : 'held'
    }),
    text('time', textOf(TIME_PIECES, TIMES), (value) => {
      const problems: Problem[] = []
      const atMs = instantOf(
        { value, where: '', path: '/at' },
        { zone: 'America/Chicago', date: '2026-11-24', nowMs: epochMs(Date.parse('2026-11-24T20:00:00Z')) },
        problems,
      )
      if (atMs === null) assertProblems(problems, value)
      else if (!Number.isInteger(atMs)) throw new Find(`an instant of ${atMs}`)
      return atMs === null ? 'refused' : 'read'
    }),
    text('whole number', fc.oneof(fc.constantFrom(...NUMBERS), anyText), (value) => {
      const number = wholeNumber(value, 0)
      if (number !== null && !Number.isSafeInteger(number)) throw new Find(`a number of ${number}`)
      return number === null ? 'refused' : 'read'
    }),
    {
      name: 'device, code, token',
      weight: 0.3,
      inputs: mutated([DEVICE, ...JOINS]),
      check: (raw) => {
        const read = [joinSchema, newCodeSchema, newTokenSchema, deviceChangeSchema].filter(
          (one) => one.safeParse(raw).success,
        )
        return parseDevice(raw) !== null || read.length > 0 ? 'read' : 'refused'
      },
    },
  ]
}

function text(name: string, inputs: fc.Arbitrary<string>, check: (value: string) => string): Target {
  return { name, weight: 0.3, inputs, check: (value) => check(value as string) }
}
