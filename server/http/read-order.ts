import { parseCommand } from '../../shared-core/day/command-schema.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import type { Meaning } from '../../shared-core/live/sales-import.ts'
import type { AskedItem, AskedLine, OrderCommand } from '../../shared-core/orders/order-commands.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import { problemsOf } from '../../shared-core/shop/problems.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { times } from '../orders/import-count.ts'
import { meantBy } from '../orders/import-names.ts'
import type { Today } from './instant.ts'
import { dueInstantOf } from './instant.ts'
import { findNamed, named } from './named.ts'
import type { PostedOrder } from './orders-schema.ts'
import { orderSchema } from './orders-schema.ts'
import type { Typed } from './typed-load.ts'

type TakeOrder = Extract<OrderCommand, { type: 'takeOrder' }>

export type OrderRead =
  | { readonly ok: true; readonly act: TakeOrder; readonly ignored: number }
  | { readonly ok: false; readonly problems: readonly Problem[] }

interface Reading {
  readonly shop: Shop
  readonly today: Today
  /** What the desk has said of the till's names. */
  readonly meanings: ReadonlyMap<string, Meaning>
}

interface Reader extends Reading {
  readonly problems: Problem[]
}

/** An order of a till, with names and local times, as a command; every mistake is told with its place. */
export function readOrder(raw: unknown, reading: Reading): OrderRead {
  const read = orderSchema.safeParse(raw)
  if (!read.success) return { ok: false, problems: problemsOf(read.error.issues, raw) }
  const order = read.data
  const reader: Reader = { ...reading, problems: [] }
  const { problems, shop, today } = reader
  const ordered = orderedIn(order, reader)
  const { due = null, run = null, paid, mark = null, stop, ref = null } = order
  const dueAtMs = due === null ? null : dueInstantOf(at(due, '/due'), today, problems)
  const way = order.way ?? (due === null ? 'here' : 'pickUp')
  if (way !== 'here' && due === null)
    problems.push({
      path: '/due',
      wrong: 'Nobody waits here for it, and it is due at no time.',
      right: 'When it is due.',
    })
  const runId = run === null ? null : named(shop.runs, { typed: at(run, '/run'), what: 'run', problems })
  if (problems.length === 0 && ordered.lines.length + ordered.items.length === 0)
    problems.push({ path: '/lines', wrong: 'Nothing is ordered.', right: 'At least one line or item.' })
  if (problems.length > 0) return { ok: false, problems }
  const said = { mark, dueAtMs, way, runId, stop: stop ?? 0, isPaid: paid ?? false, ...detailsIn(order) }
  const act: TakeOrder = {
    type: 'takeOrder',
    ...said,
    lines: ordered.lines,
    items: ordered.items,
    ...(ref === null ? {} : { ref }),
  }
  const parsed = parseCommand({ id: ANY_ID, deviceSeq: 1, tappedAtMs: null, ...act })
  return parsed.ok ? { ok: true, act, ignored: ordered.ignored } : parsed
}

/** What names come to may be more than a command may hold: that is looked at with an id that no command has. */
const ANY_ID = '0000000000'

/** Names in an order that are neither a variety's nor on the menu: the till's own, perhaps. */
export function tillNamesOf(raw: unknown, shop: Shop): readonly string[] {
  const read = orderSchema.safeParse(raw)
  const names = read.success ? (read.data.lines ?? []).flatMap(({ variety }) => variety ?? []) : []
  return [...new Set(names.filter((name) => findNamed(shop.varieties, name) === null))]
}

interface Ordered {
  readonly lines: AskedLine[]
  readonly items: AskedItem[]
  /** Lines of what the desk has said to be none of the shop's pieces. */
  ignored: number
}

function orderedIn({ lines, items }: PostedOrder, reader: Reader): Ordered {
  const ordered: Ordered = { lines: [], items: [], ignored: 0 }
  for (const [index, line] of (lines ?? []).entries()) readLine(line, `/lines/${index}`, reader, ordered)
  for (const [index, item] of (items ?? []).entries()) {
    const asked = itemOf(item, `/items/${index}`, reader)
    if (asked !== null) ordered.items.push(asked)
  }
  return ordered
}

type PostedLine = NonNullable<PostedOrder['lines']>[number]
type PostedItem = NonNullable<PostedOrder['items']>[number]

function readLine(line: PostedLine, path: string, reader: Reader, ordered: Ordered): void {
  const { shop, meanings, problems } = reader
  const { variety, dozens, pieces } = line
  const count = { dozens: dozens ?? 0, pieces: pieces ?? 0 }
  if (count.dozens + count.pieces === 0) {
    problems.push({ path, wrong: 'It says neither dozens nor pieces.', right: '"dozens", "pieces" or both.' })
    return
  }
  const wanted = { sliced: line.sliced ?? false, bagged: line.bagged ?? false }
  const own = variety === null ? null : findNamed(shop.varieties, variety)
  if (variety === null || own !== null) {
    const without = (line.without ?? []).flatMap((name, index) => varietyOf(name, `${path}/without/${index}`, reader))
    ordered.lines.push({ varietyId: own?.id ?? null, without, ...count, ...wanted })
    return
  }
  const meant =
    meanings.has(variety) || findNamed(shop.menu, variety) !== null ? meantBy(variety, shop, meanings) : null
  if (meant?.kind === 'nothing') ordered.ignored += 1
  else if (meant?.kind === 'item') {
    const item = itemOf({ item: variety, times: count.dozens * shop.orders.dozenPieces + count.pieces }, path, reader)
    if (item !== null) ordered.items.push(item)
  } else if (meant?.kind === 'pieces') {
    ordered.lines.push(...meant.lines.map(({ pieces: each, ...of }) => ({ ...of, ...times(count, each), ...wanted })))
  } else varietyOf(variety, `${path}/variety`, reader)
}

function varietyOf(name: string, path: string, { shop, problems }: Reader): readonly VarietyId[] {
  const id = named(shop.varieties, { typed: at(name, path), what: 'variety', problems })
  return id === null ? [] : [id]
}

function itemOf(item: PostedItem, path: string, reader: Reader): AskedItem | null {
  const { shop, problems } = reader
  const itemId = named(shop.menu, { typed: at(item.item, `${path}/item`), what: 'item on the menu', problems })
  const bagel = item.bagel ?? null
  const [varietyId = null] = bagel === null ? [] : varietyOf(bagel, `${path}/bagel`, reader)
  if (itemId === null) return null
  if (shop.menu.get(itemId)?.onBagel === true && bagel === null)
    problems.push({ path: `${path}/bagel`, wrong: `"${item.item}" is made on a bagel.`, right: 'Which variety.' })
  const portions = (names: readonly string[] | null | undefined, field: string) =>
    (names ?? []).flatMap((name, index) => {
      const typed = at(name, `${path}/${field}/${index}`)
      return named(shop.portions, { typed, what: 'portion', problems }) ?? []
    })
  return {
    itemId,
    varietyId,
    toasted: item.toasted ?? false,
    without: portions(item.without, 'without'),
    more: portions(item.more, 'more'),
    allergies: item.allergies ?? [],
    times: item.times ?? 1,
  }
}

function detailsIn({ name, phone, note }: PostedOrder): Pick<TakeOrder, 'details'> {
  if (name == null && phone == null && note == null) return {}
  return { details: { name: name ?? '', phone: phone ?? '', note: note ?? '' } }
}

function at(value: string, path: string): Typed<string> {
  return { value, where: '', path }
}
