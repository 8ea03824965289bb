/** The pages of sales in, by what stands after the place in the address. */
export type SalesPage =
  | { readonly kind: 'files' }
  | { readonly kind: 'names' }
  /** One file, by its number. */
  | { readonly kind: 'file'; readonly id: number }

/** @example pageOf('file/12') // { kind: 'file', id: 12 } */
export function pageOf(within: string): SalesPage {
  if (within === 'names') return { kind: 'names' }
  const [, id] = /^file\/(\d{1,9})$/.exec(within) ?? []
  return id === undefined ? { kind: 'files' } : { kind: 'file', id: Number(id) }
}

/** @example withinOf({ kind: 'file', id: 12 }) // 'file/12' */
export function withinOf(page: SalesPage): string {
  if (page.kind === 'files') return ''
  return page.kind === 'names' ? 'names' : `file/${page.id}`
}
