import { describe, expect, it } from 'vitest'
import { fitting, roomLayout } from '../../client/bench/dough-room/room-layout.ts'
import type { PadKey } from '../../client/bench/dough-room/typed-number.ts'
import { afterKey, typedThousandths } from '../../client/bench/dough-room/typed-number.ts'
import { sheetRoom } from '../../client/bench/sheet.tsx'

const typed = (...keys: readonly PadKey[]) => keys.reduce(afterKey, '')

describe('numbers typed on large keys', () => {
  it.each<[readonly PadKey[], string, number | null]>([
    [[], '', null],
    [['7', '6', '.', '5'], '76.5', 76_500],
    [['7', '6', '.'], '76.', 76_000],
    [['.', '2', '5'], '0.25', 250],
    [['0', '5'], '5', 5_000],
    [['±', '2'], '-2', -2_000],
    [['±', '2', '±'], '2', 2_000],
    [['±', '0'], '-0', 0],
    [['1', '.', '.', '0', '0', '1', '9'], '1.001', 1_001],
    [['1', '2', '3', '4', '5', '6', '7'], '123456', 123_456_000],
    [['4', '2', 'back'], '4', 4_000],
    [['4', '2', 'clear'], '', null],
    [['±'], '-', null],
  ])('given the keys %j, then %s stands there, which is %s thousandths', (keys, text, thousandths) => {
    expect(typed(...keys)).toBe(text)
    expect(typedThousandths(text)).toBe(thousandths)
  })
})

describe('stations on the glass', () => {
  const TABLET = { keyPx: 118, gapPx: 18, marginPx: 16 }
  const glass = (widthPx: number, heightPx: number) => ({
    widthPx,
    heightPx,
    screenWidthPx: widthPx,
    screenHeightPx: heightPx,
  })

  it('given a ten-inch tablet, then five stations stand side by side, each with three keys of full height', () => {
    const layout = roomLayout(sheetRoom(glass(1280, 800), TABLET), 40)
    expect(layout).toMatchObject({ isNarrow: false, items: 3 })
    expect(5 * layout.columnPx + 4 * 18).toBeLessThanOrEqual(1280 - 32)
    expect(layout.itemPx).toBeGreaterThanOrEqual(118)
  })

  it('given a phone, then the stations stand below each other, as wide as the glass', () => {
    expect(roomLayout(sheetRoom(glass(390, 844), TABLET), 40)).toMatchObject({ isNarrow: true, columnPx: 358 })
  })

  it('given more than fits, then the last place says how many more there are', () => {
    expect(fitting([1, 2, 3], 3)).toEqual({ shown: [1, 2, 3], more: 0 })
    expect(fitting([1, 2, 3, 4], 3)).toEqual({ shown: [1, 2], more: 2 })
    expect(fitting([1, 2], 1)).toEqual({ shown: [], more: 2 })
  })
})
