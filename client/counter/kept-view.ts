import type { Keep, State } from '../../shared-core/day/state.ts'

/** The keeps of one page, the longest kept first. A page that no longer exists counts as the last one. */
export function keptPage(
  all: readonly Keep[],
  rows: number,
  wanted: number,
): { readonly keeps: readonly Keep[]; readonly page: number; readonly pages: number } {
  const sorted = [...all].sort((one, other) => one.keptAtMs - other.keptAtMs || (one.id < other.id ? -1 : 1))
  const pages = Math.max(1, Math.ceil(sorted.length / rows))
  const page = Math.min(pages - 1, Math.max(0, wanted))
  return { keeps: sorted.slice(page * rows, (page + 1) * rows), page, pages }
}

/** What is kept for people of whom the board knows no order. */
export function keptForNobody({ keeps }: State): readonly Keep[] {
  return [...keeps.values()].filter(({ orderId }) => orderId === undefined)
}
