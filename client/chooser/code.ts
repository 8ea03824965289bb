const DIGITS = 6

/**
 * The digits in what was typed or pasted, at most six.
 * @example digitsIn('123 456') // '123456'
 */
export function digitsIn(text: string): string {
  return text.replace(/\D/g, '').slice(0, DIGITS)
}

export function isWhole(code: string): boolean {
  return code.length === DIGITS
}

/**
 * The code in the address of a camera's link. It stands after the hash, which is not sent to a server and so not logged.
 * @returns null when there is none @example codeInLink('#join=123456') // '123456'
 */
export function codeInLink(hash: string): string | null {
  return /^#join=(\d{6})$/.exec(hash)?.[1] ?? null
}
