/** What became of something that the desk asked of the shop's server to be done. */
export type Done<Value> =
  | { readonly kind: 'done'; readonly value: Value }
  /** The server said no, with this status of HTTP; `detail` is its sentence, in English. */
  | { readonly kind: 'refused'; readonly status: number; readonly detail: string }
  | { readonly kind: 'no-contact' }

/**
 * Asks the shop's own server, which serves this very build: what it answers has the form that it promises.
 * Never throws: whatever goes wrong on the way is no contact.
 */
export async function call<Value>(
  method: 'POST' | 'PUT' | 'PATCH' | 'DELETE',
  address: string,
  body?: object,
): Promise<Done<Value>> {
  try {
    const response = await fetch(address, {
      method,
      headers: { 'content-type': 'application/json' },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    })
    const text = await response.text()
    const said = text === '' ? null : JSON.parse(text)
    if (response.ok) return { kind: 'done', value: said }
    return { kind: 'refused', status: response.status, detail: typeof said?.detail === 'string' ? said.detail : '' }
  } catch {
    return { kind: 'no-contact' }
  }
}
