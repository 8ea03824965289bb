import type { VarietyId } from '../ids.ts'
import type { Book, BookWithout, Wanted } from './book.ts'
import { bookOf } from './book.ts'
import { earliestOf, isFree } from './earliest.ts'
import type { PromiseAsked, PromiseWhy } from './promise.ts'
import { fits } from './spoken-for.ts'
import type { Supply } from './supply.ts'

/**
 * What decides the earliest time: the same is asked of a book without walk-ins, and of one without orders either; what
 * makes it sooner is the reason.
 */
export function whyOf(asked: PromiseAsked, book: Book, wanted: readonly Wanted[], atMs: number | null): PromiseWhy {
  const { nowMs, closesAtMs } = book
  if (atMs === nowMs) return { code: 'there' }
  if (nowMs >= closesAtMs) return { code: 'tooLate' }
  const sooner = (without: BookWithout) => {
    const other = bookOf(asked, 'careful', {
      ...without,
      ...(asked.leaveOut === undefined ? {} : { leaveOut: asked.leaveOut }),
    })
    const at = other === null ? null : earliestOf(other, wanted)
    return at !== null && (atMs === null || at < atMs) ? at : null
  }
  const line = blocking(book, wanted, atMs)
  const varietyId = line?.varietyId ?? null
  if (sooner({ walkIns: true }) !== null) return { code: 'walkIns', varietyId }
  if (sooner({ walkIns: true, orders: true }) !== null) {
    const order = book.others.find((one) => one.varietyId === null || line === undefined || isOf(line, one.varietyId))
    return order === undefined ? { code: 'walkIns', varietyId } : { code: 'orders', varietyId, orderId: order.orderId }
  }
  return atMs === null ? whyNever(asked, book, line) : whyThen(book, wanted, atMs)
}

/** The first line that keeps the whole from being had a moment sooner, by itself. */
function blocking(book: Book, wanted: readonly Wanted[], atMs: number | null): Wanted | undefined {
  const sooner = atMs === null ? book.closesAtMs : atMs - 1
  return wanted.find((line) => !isFree(book, [line], sooner)) ?? wanted[0]
}

function isOf(line: Wanted, varietyId: VarietyId): boolean {
  return fits(line, varietyId)
}

/** Something becomes ready just then, or was ready so long ago that it is packed by then. */
function whyThen({ supply, nowMs }: Book, wanted: readonly Wanted[], atMs: number): PromiseWhy {
  let found: { readonly supply: Supply; readonly line: Wanted } | null = null
  for (const line of wanted) {
    for (const one of supply) {
      if (one.readyAtMs + line.beforeMs !== atMs || !isOf(line, one.varietyId)) continue
      if (found === null || one.readyAtMs > found.supply.readyAtMs) found = { supply: one, line }
    }
  }
  if (found === null || found.supply.readyAtMs <= nowMs) return { code: 'packing' }
  const { readyAtMs, from, shelfId } = found.supply
  const { varietyId } = found.line
  return from === 'cooling'
    ? { code: 'cooling', varietyId, readyAtMs }
    : { code: 'load', varietyId, shelfId, readyAtMs }
}

function whyNever({ state }: PromiseAsked, { shop, supply, closesAtMs }: Book, line: Wanted | undefined): PromiseWhy {
  if (line === undefined) return { code: 'tooLate' }
  const its = supply.filter(({ varietyId }) => isOf(line, varietyId))
  const inTime = its.filter(({ readyAtMs }) => readyAtMs + line.beforeMs <= closesAtMs)
  if (its.length > inTime.length) return { code: 'tooLate' }
  const { varietyId } = line
  const variety = varietyId === null ? undefined : shop.varieties.get(varietyId)
  if (variety === undefined) return { code: 'noLoad', varietyId }
  const isLeft = [...state.batches.values()].some(
    ({ doughId, stage, varietyId: of }) =>
      doughId === variety.doughId && stage !== 'oven' && (of === null || of === variety.id),
  )
  return isLeft ? { code: 'noLoad', varietyId } : { code: 'dough', doughId: variety.doughId }
}
