import { fileURLToPath } from 'node:url'
import type { Browser, Page } from '@playwright/test'
import { chromium } from '@playwright/test'
import { build } from 'esbuild'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { figureOf } from '../../client/parts/sound-figures.ts'
import { chromiumPath } from '../run/chromium.mjs'
import type {} from './page/parts-page.tsx'

/** What only a browser can answer: real text, real touches, real sound. No server, no network: the page is one text. */
let browser: Browser
let page: Page

beforeAll(async () => {
  const executablePath = chromiumPath()
  const args = ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking', '--disable-sync']
  browser = await chromium.launch({ args, ...(executablePath === undefined ? {} : { executablePath }) })
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } })
  const { script, style } = await bundle()
  await page.setContent('<!doctype html><div id="page"></div>')
  await page.addStyleTag({ content: style })
  await page.addScriptTag({ content: script })
  // Text that the font is needed for must be on the page before it loads.
  await page.evaluate(() => window.parts.rings(['22 s']))
  await page.evaluate(async () => {
    const name = "'Atkinson Hyperlegible Next Variable'"
    await Promise.all([document.fonts.load(`400 20px ${name}`), document.fonts.load(`700 20px ${name}`)])
  })
}, 60_000)

afterAll(() => browser.close())

describe('the font', () => {
  const texts = [
    'Out of 3 in 14 min',
    'Everything 36, Salt 12, Pumpernickel 48',
    'then pull 3 trays plain',
    'Sácalo del 3 en 14 min: ajonjolí, cebolla y ajo',
    '¿Cuántas quedan? 0123456789 − + : · ½',
    'last load in by 10:34',
  ]
  it.each(['regular', 'strong'] as const)(
    '%s is as wide as the table says, or a little narrower by its kerning',
    async (weight) => {
      const widths = await page.evaluate(([all, kind]) => window.parts.widths(all, kind), [texts, weight] as const)
      for (const { told, real } of widths) {
        expect(real).toBeLessThanOrEqual(told * 1.005)
        expect(real).toBeGreaterThan(told * 0.95)
      }
    },
  )
})

describe('a ring’s label', () => {
  const labels = ['22 s', '12 min', 'late 3 min', '3 min tarde', 'now', '1 h 20 min']
  it('lies inside the hole as painted', async () => {
    await page.evaluate((all) => window.parts.rings(all), labels)
    const corners = await page.locator('.ring-label tspan').evaluateAll((lines) =>
      lines.map((line) => {
        const ring = line.closest('svg')?.getBoundingClientRect()
        const text = line.getBoundingClientRect()
        if (ring === undefined) return Number.NaN
        const middleX = ring.left + ring.width / 2
        return Math.max(Math.abs(text.left - middleX), Math.abs(text.right - middleX)) / (ring.width / 2)
      }),
    )
    expect(corners.length).toBeGreaterThanOrEqual(labels.length)
    // The hole's radius is 28 of 50.
    for (const corner of corners) expect(corner).toBeLessThan(0.56)
  })

  it('and its arc stay untouched by a tick that nobody would see', async () => {
    await page.evaluate(() => {
      window.parts.ring(0.5)
      const changes: unknown[] = []
      Object.assign(window, { changes })
      const watch = new MutationObserver((records) => changes.push(...records))
      watch.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true })
      window.parts.ring(0.5001)
    })
    expect(await page.evaluate('new Promise((done) => setTimeout(() => done(changes.length)))')).toBe(0)
    await page.evaluate(() => window.parts.ring(0.4))
    expect(await page.evaluate('new Promise((done) => setTimeout(() => done(changes.length)))')).toBeGreaterThan(0)
  })
})

/** Chromium lays out in 64ths of a pixel, and the table's values are rounded to a hundredth. */
const LAYOUT_PX = 0.02

describe('a key', () => {
  const tablet = { diagonalInch: 10.1, widthPx: 1280, heightPx: 800 }
  const pressed = () => page.evaluate(() => [...window.parts.pressed])
  beforeEach(async () => {
    await page.evaluate((panel) => {
      window.parts.pressed.length = 0
      window.parts.keys(panel)
    }, tablet)
  })

  it.each([
    [{ diagonalInch: 10.1, widthPx: 1280, heightPx: 800 }, 117.68],
    [{ diagonalInch: 10.1, widthPx: 1920, heightPx: 1200, dpr: 1.5 }, 117.68],
    [{ diagonalInch: 24, widthPx: 1920, heightPx: 1080 }, 72.27],
  ])('on %o is at least 20 mm both ways, 3 mm from the next', async (panel, px20mm) => {
    await page.evaluate((size) => window.parts.keys(size), panel)
    const boxes = await page
      .locator('.key')
      .evaluateAll((keys) => keys.map((key) => key.getBoundingClientRect().toJSON()))
    expect(boxes).toHaveLength(5)
    for (const { width, height } of boxes) {
      expect(width).toBeGreaterThanOrEqual(px20mm - LAYOUT_PX)
      expect(height).toBeGreaterThanOrEqual(px20mm - LAYOUT_PX)
    }
    expect(boxes[1].left - boxes[0].right).toBeGreaterThanOrEqual((px20mm / 20) * 3 - LAYOUT_PX)
  })

  it('acts once for a touch that slides off before it is let go', async () => {
    const box = await keyBox('1')
    await page.mouse.move(box.x + 20, box.y + 20)
    await page.mouse.down()
    expect(await pressed()).toEqual(['one'])
    expect(await page.locator('.key').first().getAttribute('data-down')).toBe('true')
    await page.mouse.move(box.x + 20, box.y + 400, { steps: 4 })
    await page.mouse.up()
    expect(await page.locator('.key').first().getAttribute('data-down')).toBe('false')
    expect(await pressed()).toEqual(['one'])
  })

  it('acts once for a whole click, and for a touch that the glass reports twice', async () => {
    await page.getByRole('button', { name: '1', exact: true }).click()
    expect(await pressed()).toEqual(['one'])
    await page
      .locator('.key')
      .nth(1)
      .evaluate((key) => {
        for (const shift of [0, 9]) {
          key.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true, clientX: 300 + shift, clientY: 30 }))
        }
      })
    expect(await pressed()).toEqual(['one', 'two'])
  })

  it('acts once for Enter however long it is held', async () => {
    await page.locator('.key').first().focus()
    await page.keyboard.down('Enter')
    await page.keyboard.down('Enter')
    await page.keyboard.down('Enter')
    await page.keyboard.up('Enter')
    expect(await pressed()).toEqual(['one'])
    const goesOn = (isRepeat: boolean) =>
      page
        .locator('.key')
        .first()
        .evaluate((key, repeat) => {
          return key.dispatchEvent(
            new KeyboardEvent('keydown', { key: 'Enter', repeat, cancelable: true, bubbles: true }),
          )
        }, isRepeat)
    expect([await goesOn(false), await goesOn(true)]).toEqual([true, false])
  })

  it('that cannot be pressed says why and does nothing', async () => {
    const refused = page.getByRole('button', { name: 'Load 3' })
    expect(await refused.textContent()).toContain('no rye is ready')
    expect(await refused.getAttribute('aria-disabled')).toBe('true')
    await refused.click({ force: true })
    await refused.focus()
    await page.keyboard.press('Enter')
    expect(await pressed()).toEqual([])
  })

  it('that counts up stops at the most and says so', async () => {
    await page.getByRole('button', { name: '6 fewer' }).click()
    await page.getByRole('button', { name: '6 more' }).click({ force: true })
    expect(await page.getByRole('button', { name: '6 more' }).textContent()).toContain('most')
    expect(await pressed()).toEqual(['to 6'])
  })

  async function keyBox(name: string) {
    const box = await page.getByRole('button', { name, exact: true }).boundingBox()
    if (box === null) throw new Error(`no key ${name}`)
    return box
  }
})

describe('the ruler', () => {
  it('as painted has no two texts that touch and none cut off', async () => {
    const hour = 3_600_000
    const at = (hours: number) => 20_000 * 24 * hour + hours * hour
    const orders = ['van', '5 dz school', 'office 2 dz', '3 dz', 'market', '9:15 3 dz, short 6'].map((text, index) => ({
      key: text,
      text,
      atMs: at(7 + index * 0.7),
      trouble: index === 5,
    }))
    await page.evaluate((props) => window.parts.ruler(props), {
      fromMs: at(4),
      toMs: at(15),
      nowMs: at(6.5),
      lastLoad: { atMs: at(10.5), text: 'last load in by 10:34' },
      changeover: { fromMs: at(11), toMs: at(12), text: 'changeover' },
      secondMenu: { fromMs: at(12), toMs: at(15) },
      orders,
      fontPx: 20,
    })
    const { frame, texts } = await page.locator('.ruler').evaluate((ruler) => ({
      frame: ruler.getBoundingClientRect().toJSON(),
      texts: [...ruler.querySelectorAll('text')].map((text) => text.getBoundingClientRect().toJSON()),
    }))
    expect(texts.length).toBeGreaterThan(12)
    for (const one of texts) {
      expect(one.left).toBeGreaterThanOrEqual(frame.left)
      expect(one.right).toBeLessThanOrEqual(frame.right)
      expect(one.bottom).toBeLessThanOrEqual(frame.bottom)
      for (const other of texts) {
        if (one === other || Math.abs(one.top - other.top) > 5) continue
        expect(one.right <= other.left || other.right <= one.left).toBe(true)
      }
    }
  })
})

describe('a figure', () => {
  it('sounds as written: each note at its pitch, silence between and after', async () => {
    const samples = await page.evaluate(() => window.parts.lift(null))
    const figure = figureOf('lift', false)
    for (const note of figure) {
      const heard = part(samples, note.fromMs + 20, note.fromMs + note.lengthMs - 20)
      const others = figure.map(({ hz }) => hz).filter((hz) => hz !== note.hz)
      for (const hz of others) expect(strength(heard, note.hz)).toBeGreaterThan(3 * strength(heard, hz))
    }
    expect(loudest(part(samples, 425, 485))).toBeLessThan(0.02)
    expect(loudest(samples)).toBeGreaterThan(0.5)
    expect(loudest(samples)).toBeLessThanOrEqual(1)
    expect(loudest(part(samples, 1_100, 2_000))).toBeLessThan(0.001)
  })

  it('falls silent within a twentieth of a second when it is stopped', async () => {
    const samples = await page.evaluate(() => window.parts.lift(0.25))
    expect(loudest(part(samples, 230, 250))).toBeGreaterThan(0.3)
    // It fades: cut off at once it would end with a click.
    expect(loudest(part(samples, 251, 253))).toBeGreaterThan(0.3)
    expect(loudest(part(samples, 270, 280))).toBeLessThan(0.15)
    expect(loudest(part(samples, 300, 2_000))).toBeLessThan(0.01)
  })
})

const SAMPLES_PER_MS = 44.1

function part(samples: readonly number[], fromMs: number, toMs: number): readonly number[] {
  return samples.slice(Math.round(fromMs * SAMPLES_PER_MS), Math.round(toMs * SAMPLES_PER_MS))
}

function loudest(samples: readonly number[]): number {
  return samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)
}

/** How strong one pitch is in a sound: the length of its Fourier coefficient. */
function strength(samples: readonly number[], hz: number): number {
  const turn = (2 * Math.PI * hz) / (SAMPLES_PER_MS * 1000)
  let cosine = 0
  let sine = 0
  for (const [index, sample] of samples.entries()) {
    cosine += sample * Math.cos(turn * index)
    sine += sample * Math.sin(turn * index)
  }
  return Math.hypot(cosine, sine) / samples.length
}

async function bundle() {
  const result = await build({
    entryPoints: [fileURLToPath(new URL('./page/parts-page.tsx', import.meta.url))],
    bundle: true,
    write: false,
    outdir: 'nowhere',
    format: 'iife',
    jsx: 'automatic',
    jsxImportSource: 'preact',
    loader: { '.woff2': 'dataurl' },
  })
  const text = (ending: string) => result.outputFiles.find(({ path }) => path.endsWith(ending))?.text ?? ''
  return { script: text('.js'), style: text('.css') }
}
