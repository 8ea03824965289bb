/** What came of asking the shop's API for something. */
export type Got<Value> =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'got'; readonly value: Value }
  /** The server knows no such thing, or not for this device: asking again brings nothing else. */
  | { readonly kind: 'unknown' }
  /** It is being made; ask again soon. */
  | { readonly kind: 'not-yet' }
  | { readonly kind: 'no-contact' }

/**
 * Asks the shop's own server, which serves this very build: what it answers has the form that it promises.
 * Never throws: whatever goes wrong on the way is no contact.
 */
export async function getJson<Value>(address: string): Promise<Got<Value>> {
  try {
    const response = await fetch(address, { headers: { accept: 'application/json' } })
    if ([401, 403, 404].includes(response.status)) return { kind: 'unknown' }
    if (response.status === 503) return { kind: 'not-yet' }
    if (!response.ok) return { kind: 'no-contact' }
    return { kind: 'got', value: await response.json() }
  } catch {
    return { kind: 'no-contact' }
  }
}
