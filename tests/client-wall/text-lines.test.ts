import { describe, expect, it } from 'vitest'
import { fits, nameLines, shortened, widthOf, wrapText } from '../../client/wall/text-lines.ts'

const FONT = 40
const room = (text: string, fontPx = FONT) => ({ roomPx: widthOf(text, fontPx), fontPx })

describe('text set into lines', () => {
  it('given room for all of it, then it is one line', () => {
    expect(wrapText('then 24 Sesame and 12 Poppy', room('then 24 Sesame and 12 Poppy'))).toEqual([
      'then 24 Sesame and 12 Poppy',
    ])
  })

  it('given less room, then it breaks at spaces, and what leads on stays with the word after it', () => {
    expect(wrapText('then 24 Sesame and 12 Poppy', room('then 24 Sesame and 12'))).toEqual([
      'then 24 Sesame',
      'and 12 Poppy',
    ])
  })

  it('given a number at the end, then it is a line’s last word', () => {
    expect(wrapText('look at 12', room('look at'))).toEqual(['look at', '12'])
  })

  it('given any width, then no line is wider and nothing but a single long word is shortened', () => {
    const text = 'then 24 Sun-dried Tomato & Basil and 12 Cinnamon Raisin & Walnut'
    for (let roomPx = 120; roomPx < 1_400; roomPx += 37) {
      const lines = wrapText(text, { roomPx, fontPx: FONT })
      for (const line of lines) expect(widthOf(line, FONT)).toBeLessThanOrEqual(roomPx + 1)
      if (lines.every((line) => !line.includes('…'))) expect(lines.join(' ')).toBe(text)
    }
  })

  it('given a name, then it loses its end only where it must', () => {
    expect(shortened('Cinnamon raisin', room('Cinnamon raisin'))).toBe('Cinnamon raisin')
    const short = shortened('Cinnamon raisin', room('Cinnamon'))
    expect(short).toMatch(/^Cinna.*…$/)
    expect(fits(short, room('Cinnamon'))).toBe(true)
  })
})

describe('a name in one line or two', () => {
  it('given two lines, then it is broken where they are most even', () => {
    expect(nameLines('Sun-dried Tomato & Basil', room('Tomato & Basil'), 2)).toEqual(['Sun-dried', 'Tomato & Basil'])
    expect(nameLines('Blueberry Lemon Crumbled', room('Lemon Crumbled'), 2)).toEqual(['Blueberry Lemon', 'Crumbled'])
  })

  it('given room in one line, then it stays one', () => {
    expect(nameLines('Onion', room('Onion rings'), 2)).toEqual(['Onion'])
  })

  it('given one word that is too wide, then it is shortened, not broken', () => {
    expect(nameLines('Vollkornsauerteigbagel', room('Vollkorn'), 2)).toHaveLength(1)
  })
})
