import fc from 'fast-check'
import { readLoadList } from '../../../server/http/load-list.ts'
import { readOrder } from '../../../server/http/read-order.ts'
import { readSales } from '../../../server/http/read-sales.ts'
import { countsSchema, readingsSchema } from '../../../server/http/sales-schema.ts'
import { deviceId } from '../../../shared-core/ids.ts'
import type { Meaning } from '../../../shared-core/live/sales-import.ts'
import type { Problem } from '../../../shared-core/shop/problem.ts'
import { problemsOf } from '../../../shared-core/shop/problems.ts'
import { at } from '../../core/support/make.ts'
import type { Target } from '../fuzz.ts'
import { assertProblems, Find } from '../fuzz.ts'
import { mutated, textOf } from '../mutate.ts'
import type { ShopAtWork } from '../shop-at-work.ts'

const SALES_JSON = [
  { sales: [{ variety: 'Sesame', pieces: 6, at: '8:05', id: 'r1' }] },
  {
    sales: [
      { variety: null, pieces: 1 },
      { variety: 'poppy', pieces: 12, at: '2026-11-24T08:05:00-06:00' },
    ],
  },
]
const SALES_CSV = ['at,variety,pieces,id\n8:05,Sesame,6,r1\n,Poppy,1,\n', ';Sesame;6;r1\r\n;;2;r2\r\n']
const SALES_PIECES = [
  ',',
  ';',
  '\t',
  '\n',
  '\r',
  '\r\n',
  '"',
  '""',
  "'",
  '\ufeff',
  'at',
  'variety',
  'pieces',
  'id',
  '8:05',
]
const MORE_PIECES = [
  'Sesame',
  'sesame',
  'poppy',
  '6',
  '0',
  '-1',
  '5001',
  '1e3',
  ' ',
  '\0',
  '2026-11-24T08:05',
  '=2+3',
  '@sum(a1)',
]
const LIST_JSON = [
  { date: '2026-11-24', loads: [{ in: '5:10', shelf: '1', lines: [['Sesame', 36]] }, { lines: [['Poppy', 12]] }] },
]
const LIST_CSV = ['in,shelf,variety,pieces\n5:10,1,Sesame,36\n5:10,1,Poppy,12\n,,Plain,48\n', '5:10;1;Sesame;36\n']
const ORDERS = [
  {
    ref: 'r1',
    mark: 'AK',
    due: '23:05',
    lines: [
      { variety: 'Sesame', dozens: 1, pieces: 2, sliced: true },
      { variety: null, without: ['Poppy'], dozens: 2 },
    ],
    name: 'A. Guest',
    note: 'rings',
  },
  { lines: [{ variety: 'ASST', pieces: 3 }], items: [{ item: 'melt', bagel: 'Poppy', times: 2 }], way: 'delivery' },
]
const COUNTS = [{ at: '8:05', id: 'c1', counts: [{ variety: 'Sesame', pieces: 18, within: 3 }] }]
const READINGS = [{ readings: [{ degrees: 495, unit: 'F', shelf: '1', at: '8:05', id: 'o1' }, { degrees: 250 }] }]

/** What tills, spreadsheets and sensors post. */
export function importTargets(work: ShopAtWork): readonly Target[] {
  const { shop } = work.state
  if (shop === null) throw new Error('the shop at work is set up')
  const today = { zone: shop.profile.zone, date: '2026-11-24', nowMs: at('20:00') }
  const sales = (raw: unknown) => {
    const read = readSales(raw, { shop, today, deviceId: deviceId('till') })
    if (read.problems.length > 0) assertProblems(read.problems, raw)
    else if (!read.isWhole) throw new Find('not read, and nothing said')
    return took(
      work,
      read.sales.map(({ command }) => command),
      read.problems,
    )
  }
  const list = (raw: unknown) => {
    const read = readLoadList(raw, shop, { today: today.date, nowMs: at('4:40') })
    if (!read.ok) assertProblems(read.problems, raw)
    return took(
      work,
      read.ok ? [work.command({ type: 'setLoadList', loads: read.loads })] : [],
      read.ok ? [] : read.problems,
    )
  }
  const meanings = new Map<string, Meaning>([['ASST', { kind: 'unnamed', pieces: 6, among: null }]])
  const order = (raw: unknown) => {
    const read = readOrder(raw, { shop, today, meanings })
    if (!read.ok) assertProblems(read.problems, raw)
    return took(work, read.ok ? [work.command(read.act)] : [], read.ok ? [] : read.problems)
  }
  const form = (schema: typeof countsSchema | typeof readingsSchema) => (raw: unknown) => {
    const read = schema.safeParse(raw)
    if (!read.success) assertProblems(problemsOf(read.error.issues, raw), raw)
    return read.success ? 'read' : 'refused'
  }
  const lookOver = () => work.assertAsBefore()
  return [
    { name: 'sales, JSON', weight: 0.3, inputs: mutated(SALES_JSON), check: sales, lookOver },
    {
      name: 'sales, CSV',
      weight: 0.3,
      inputs: textOf([...SALES_PIECES, ...MORE_PIECES], SALES_CSV),
      check: sales,
      lookOver,
    },
    { name: 'load list, JSON', weight: 0.3, inputs: mutated(LIST_JSON), check: list, lookOver },
    {
      name: 'load list, CSV',
      weight: 0.3,
      inputs: textOf([...SALES_PIECES, ...MORE_PIECES], LIST_CSV),
      check: list,
      lookOver,
    },
    { name: 'orders, JSON', weight: 0.3, inputs: mutated(ORDERS), check: order, lookOver },
    { name: 'counts', weight: 0.3, inputs: mutated(COUNTS), check: form(countsSchema) },
    { name: 'oven readings', weight: 0.3, inputs: fc.oneof(mutated(READINGS)), check: form(readingsSchema) },
  ]
}

/** What a reader of ours made of a file is a command that our own reader of commands takes. */
function took(work: ShopAtWork, commands: readonly object[], problems: readonly Problem[]): string {
  if (commands.length === 0) return problems.length > 0 ? 'refused' : 'nothing'
  const word = work.submit(commands.slice(0, 20))
  if (word === 'unreadable' || word === 'nameless')
    throw new Find(`it became no command: ${JSON.stringify(commands[0])}`)
  return problems.length > 0 ? 'in part' : word
}
