import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { cssName, THEMES, tokensCss } from '../../client/theme/tokens.ts'

const theme = new URL('../../client/theme/', import.meta.url)
const parts = new URL('../../client/parts/', import.meta.url)

describe('the colours', () => {
  it('in tokens.css are those of tokens.ts', () => {
    expect(readFileSync(new URL('tokens.css', theme), 'utf8')).toBe(tokensCss())
  })

  it('have the same names in both themes', () => {
    expect(Object.keys(THEMES.light)).toEqual(Object.keys(THEMES.dark))
  })

  it('are all that a part paints with: no part has a colour of its own', () => {
    const own = cssFiles().flatMap(({ name, text }) =>
      (text.match(/#[0-9a-f]{3,8}\b|\brgba?\(|\bhsla?\(/gi) ?? []).map((found) => `${name}: ${found}`),
    )
    expect(own).toEqual([])
  })

  it('on an inverted block replace every colour that has an inverted form', () => {
    const base = readFileSync(new URL('base.css', theme), 'utf8')
    const inverted = Object.keys(THEMES.dark).filter((token) => token.startsWith('act'))
    for (const token of inverted) {
      const plain = cssName(token).replace('--act-', '--')
      expect(base).toContain(`${plain}: var(${cssName(token)});`)
    }
  })
})

describe('the styles', () => {
  it('use only colours and sizes that somebody sets', () => {
    const all = [...cssFiles(), { name: 'base.css', text: readFileSync(new URL('base.css', theme), 'utf8') }]
    const set = new Set(Object.keys(THEMES.dark).map(cssName))
    for (const { text } of all) for (const [, name = ''] of text.matchAll(/(--[a-z-]+):/g)) set.add(name)
    for (const name of ['--mm', '--size-headline', '--size-count', '--size-act', '--size-label', '--size-min'])
      set.add(name)
    const unknown = all.flatMap(({ name, text }) =>
      [...text.matchAll(/var\((--[a-z-]+)/g)].map(([, used = '']) => `${name}: ${used}`),
    )
    expect(unknown.filter((use) => !set.has(use.split(': ')[1] ?? ''))).toEqual([])
  })

  it('of every part are in the theme, or come with a part that is fetched later', () => {
    const text = readFileSync(new URL('theme.css', theme), 'utf8')
    const later = cssFiles().filter(({ name }) => !text.includes(`@import '../parts/${name}';`))
    expect(later.map(({ name }) => name)).toEqual(['outside-page.css'])
    for (const { name } of later) {
      const code = readFileSync(new URL(name.replace('.css', '.tsx'), parts), 'utf8')
      expect(code).toContain(`import './${name}'`)
    }
  })

  it.each([':has(', 'color-mix(', '@container', 'aspect-ratio', 'inset:', ':is(', ':where('])(
    'do without %s, which browsers of 2020 lack',
    (feature) => {
      expect(cssFiles().filter(({ text }) => text.includes(feature))).toEqual([])
    },
  )
})

function cssFiles() {
  return readdirSync(parts)
    .filter((name) => name.endsWith('.css'))
    .map((name) => ({ name, text: readFileSync(new URL(name, parts), 'utf8') }))
}
