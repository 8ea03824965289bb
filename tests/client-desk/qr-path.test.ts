import jsQR from 'jsqr'
import { encode } from 'uqr'
import { describe, expect, it } from 'vitest'
import { qrPath } from '../../client/desk/screens/qr-path.ts'

const PIXELS = 6

/** Paints the path as a browser would, and hands the picture to a reader that shares no code with what drew it. */
function readBack(text: string): string | null {
  const { data, size } = encode(text, { ecc: 'M', border: 4 })
  const side = size * PIXELS
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255)
  for (const [, x = '', y = '', width = ''] of qrPath(data).matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g)) {
    for (let across = Number(x) * PIXELS; across < (Number(x) + Number(width)) * PIXELS; across++)
      for (let down = Number(y) * PIXELS; down < (Number(y) + 1) * PIXELS; down++)
        pixels.fill(0, (down * side + across) * 4, (down * side + across) * 4 + 3)
  }
  return jsQR(pixels, side, side)?.data ?? null
}

describe('a code for a screen', () => {
  it.each(['http://192.168.1.7:4610/bench', 'http://boilboard.local:4610/wall?name=Pared%20n%C2%BA%202'])(
    'given %s, then a reader reads it',
    (text) => {
      expect(readBack(text)).toBe(text)
    },
  )

  it('given runs of dark modules, then each is one rectangle', () => {
    expect(qrPath([[true, true, false, true]])).toBe('M0 0h2v1h-2zM3 0h1v1h-1z')
    expect(qrPath([[false], [true]])).toBe('M0 1h1v1h-1z')
  })
})
