/** The rows of one page. A page that no longer exists counts as the nearest. @param most at least one is shown */
export function rowsPage<Item>(
  all: readonly Item[],
  most: number,
  wanted: number,
): { readonly items: readonly Item[]; readonly page: number; readonly pages: number } {
  const rows = Math.max(1, most)
  const pages = Math.max(1, Math.ceil(all.length / rows))
  const page = Math.min(pages - 1, Math.max(0, wanted))
  return { items: all.slice(page * rows, (page + 1) * rows), page, pages }
}
