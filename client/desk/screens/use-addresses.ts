import { useGot } from '../use-got.ts'

/** Where devices of the shop's network find it. */
export interface ShopAddress {
  readonly url: string
  /** `here`: as this very page was opened. */
  readonly kind: 'name' | 'address' | 'here'
}

/** What the server says of itself, and how this page was opened where that is another; best first. */
export function useAddresses(): readonly ShopAddress[] {
  const got = useGot<readonly ShopAddress[]>('/api/v1/addresses')
  return withHere(got.kind === 'got' ? got.value : [], window.location.origin)
}

/** A page that was opened by a name or number that nobody knows of still knows that one. */
export function withHere(addresses: readonly ShopAddress[], origin: string): readonly ShopAddress[] {
  const bare = (url: string) => url.replace(/\/+$/, '').toLowerCase()
  const known = addresses.some(({ url }) => bare(url) === bare(origin))
  return known ? addresses : [...addresses, { url: origin, kind: 'here' }]
}
