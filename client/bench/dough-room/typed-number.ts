/** Numbers typed on a pad of large keys, as exact thousandths: a decimal point typed is never rounded away. */

const DIGITS_MAX = 6
const DECIMALS_MAX = 3

export type PadKey = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | '.' | '±' | 'back' | 'clear'

/**
 * What stands there after one more key; a key that would make no number changes nothing.
 * @example afterKey('76', '.') // '76.'
 */
export function afterKey(typed: string, key: PadKey): string {
  if (key === 'clear') return ''
  if (key === 'back') return typed.slice(0, -1)
  if (key === '±') return typed.startsWith('-') ? typed.slice(1) : `-${typed}`
  if (key === '.') return typed.includes('.') ? typed : /\d$/.test(typed) ? `${typed}.` : `${typed}0.`
  const [whole = '', decimals] = typed.replace('-', '').split('.')
  if (decimals !== undefined) return decimals.length < DECIMALS_MAX ? `${typed}${key}` : typed
  if (whole === '0') return `${typed.slice(0, -1)}${key}`
  return whole.length < DIGITS_MAX ? `${typed}${key}` : typed
}

/**
 * @returns null where no digit was typed yet
 * @example typedThousandths('76.5') // 76_500
 */
export function typedThousandths(typed: string): number | null {
  const [, sign = '', whole = '', decimals = ''] = /^(-?)(\d+)(?:\.(\d*))?$/.exec(typed) ?? []
  if (whole === '') return null
  const thousandths = Number(whole) * 1_000 + Number(decimals.padEnd(DECIMALS_MAX, '0'))
  return sign === '-' && thousandths !== 0 ? -thousandths : thousandths
}
