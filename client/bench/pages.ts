/**
 * A long list in pages of a fixed number of places, so that nothing has to be dragged: some of the places become arrow
 * keys when all do not fit.
 */
export interface Page<Item> {
  readonly items: readonly Item[]
  readonly page: number
  readonly pages: number
}

/**
 * @param places room for this many; of these the arrows take theirs when the items need more than one page
 * @param arrows places that the arrows take: two keys in a grid, one row in a list
 * @param wanted a page that no longer exists counts as the last one
 * @throws RangeError when arrows alone would be shown
 * @example pageOf([1, 2, 3, 4, 5], { places: 4, arrows: 2 }, 1) // { items: [3, 4], page: 1, pages: 3 }
 */
export function pageOf<Item>(
  items: readonly Item[],
  { places, arrows }: { readonly places: number; readonly arrows: number },
  wanted: number,
): Page<Item> {
  const perPage = places - arrows
  if (perPage < 1) throw new RangeError(`A page of ${places} places with ${arrows} for arrows shows nothing.`)
  if (items.length <= places) return { items, page: 0, pages: 1 }
  const pages = Math.ceil(items.length / perPage)
  const page = Math.min(pages - 1, Math.max(0, wanted))
  return { items: items.slice(page * perPage, (page + 1) * perPage), page, pages }
}
