/** Fills the bytes with chance; `crypto.getRandomValues` in a browser, also on a page without a secure context. */
export type FillRandom = (bytes: Uint8Array<ArrayBuffer>) => void

/** 96 bits: a shop that makes a million ids a year meets a repeated one in none of a billion years. */
const ID_BYTES = 12

/** An id that nobody else makes, 24 characters 0–9 a–f. */
export function randomId(fillRandom: FillRandom): string {
  const bytes = new Uint8Array(ID_BYTES)
  fillRandom(bytes)
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
}
