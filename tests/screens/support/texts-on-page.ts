import type { Page } from '@playwright/test'

/** One piece of text as it is painted. Lengths in CSS pixels, colours as `#rrggbb`. */
export interface PaintedText {
  readonly text: string
  /** Classes of the elements that it stands in, nearest first. */
  readonly within: readonly string[]
  readonly fontPx: number
  /** Around the letters, not around the line. */
  readonly box: PaintedBox
  /** What it may not leave: the screen, and all that cuts off what stands over its edge. */
  readonly clip: PaintedBox
  readonly ink: string
  readonly ground: string
}

export interface PaintedBox {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** All text that can be seen on a page. Measured in the page; nothing is taken from our own code. */
export function textsOn(page: Page): Promise<PaintedText[]> {
  return page.evaluate(() => {
    const texts: PaintedText[] = []
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const parent = node.parentElement
      const text = node.textContent?.trim() ?? ''
      if (parent === null || text === '' || parent.closest('script, style') !== null) continue
      const range = document.createRange()
      range.selectNodeContents(node)
      const rects = [...range.getClientRects()].filter((rect) => rect.width > 0 && rect.height > 0)
      if (rects.length === 0 || getComputedStyle(parent).visibility === 'hidden') continue
      texts.push({ text, ...look(parent), box: lettersOf(rects), clip: clipOf(parent) })
    }
    return texts

    function look(parent: Element) {
      const style = getComputedStyle(parent)
      const isDrawn = parent instanceof SVGElement
      const scale = parent instanceof SVGGraphicsElement ? (parent.getScreenCTM()?.a ?? 1) : 1
      const within: string[] = []
      for (let at: Element | null = parent; at !== null; at = at.parentElement) within.push(...at.classList)
      return {
        within,
        fontPx: Number.parseFloat(style.fontSize) * scale,
        ink: hex(isDrawn ? style.fill : style.color),
        ground: groundOf(parent),
      }
    }

    /** A line's rectangle has air for accents above and tails below. */
    function lettersOf(rects: readonly DOMRect[]) {
      const top = Math.min(...rects.map((rect) => rect.top + rect.height * 0.22))
      const bottom = Math.max(...rects.map((rect) => rect.bottom - rect.height * 0.2))
      return {
        left: Math.min(...rects.map((rect) => rect.left)),
        right: Math.max(...rects.map((rect) => rect.right)),
        top,
        bottom,
      }
    }

    function clipOf(parent: Element) {
      const clip = { left: 0, top: 0, right: window.innerWidth, bottom: window.innerHeight }
      for (let at: Element | null = parent; at !== null; at = at.parentElement) {
        const { overflowX, overflowY } = getComputedStyle(at)
        if (overflowX === 'visible' && overflowY === 'visible') continue
        const rect = at.getBoundingClientRect()
        clip.left = Math.max(clip.left, rect.left)
        clip.top = Math.max(clip.top, rect.top)
        clip.right = Math.min(clip.right, rect.right)
        clip.bottom = Math.min(clip.bottom, rect.bottom)
      }
      return clip
    }

    function groundOf(parent: Element): string {
      for (let at: Element | null = parent; at !== null; at = at.parentElement) {
        const { backgroundColor } = getComputedStyle(at)
        if (!/^rgba\(.*, 0\)$|^transparent$/.test(backgroundColor)) return hex(backgroundColor)
      }
      return '#ffffff'
    }

    function hex(colour: string): string {
      const parts = colour.match(/[\d.]+/g) ?? []
      const [red = 0, green = 0, blue = 0] = parts.map(Number)
      return `#${[red, green, blue].map((part) => Math.round(part).toString(16).padStart(2, '0')).join('')}`
    }
  })
}

/** Pairs of texts whose letters overlap. */
export function overlaps(texts: readonly PaintedText[]): readonly string[] {
  return texts.flatMap((one, index) =>
    texts
      .slice(index + 1)
      .filter((other) => meet(one.box, other.box))
      .map((other) => `"${one.text}" and "${other.text}"`),
  )
}

/** Texts of which a part cannot be seen. A pixel is lost to rounding. */
export function cutOff(texts: readonly PaintedText[]): readonly string[] {
  return texts
    .filter(
      ({ box, clip }) =>
        box.left < clip.left - 1 ||
        box.top < clip.top - 1 ||
        box.right > clip.right + 1 ||
        box.bottom > clip.bottom + 1,
    )
    .map(({ text }) => text)
}

function meet(one: PaintedBox, other: PaintedBox): boolean {
  const across = Math.min(one.right, other.right) - Math.max(one.left, other.left)
  return across > 1 && Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > 1
}
