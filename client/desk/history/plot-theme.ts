/** The colours and the print of a page, for what is drawn on a canvas. */
export interface PlotTheme {
  readonly ground: string
  readonly text: string
  readonly quiet: string
  readonly line: string
  readonly crust: string
  readonly coming: string
  /** Of what dots stand on: both themes show them. */
  readonly edge: string
  /** CSS px. */
  readonly printPx: number
  readonly font: string
}

export function themeOf(element: Element): PlotTheme {
  const style = getComputedStyle(element)
  const of = (name: string) => style.getPropertyValue(`--${name}`).trim()
  const printPx = Math.round(Number.parseFloat(style.fontSize) * PRINT_PART)
  return {
    ...{ ground: of('surface'), text: of('text'), quiet: of('quiet'), line: of('track') },
    ...{ crust: of('crust'), coming: of('coming'), edge: of('line') },
    ...{ printPx, font: `${printPx}px ${style.fontFamily}` },
  }
}
const PRINT_PART = 0.85

/** Stripes from lower left to upper right: a guess, whatever its hue. */
export function stripes(colour: string, ground: string): CanvasPattern | string {
  const ratio = window.devicePixelRatio || 1
  const size = Math.round(STRIPE_PX * ratio)
  const tile = document.createElement('canvas')
  tile.width = size
  tile.height = size
  const paint = tile.getContext('2d')
  if (paint === null) return colour
  paint.fillStyle = ground
  paint.fillRect(0, 0, size, size)
  paint.strokeStyle = colour
  paint.lineWidth = size / 3
  // Three strokes, so that the tile's corners join their neighbours'.
  for (const shift of [-size, 0, size]) {
    paint.beginPath()
    paint.moveTo(shift - size / 2, size * 1.5)
    paint.lineTo(shift + size * 1.5, -size / 2)
    paint.stroke()
  }
  return paint.createPattern(tile, 'repeat') ?? colour
}
const STRIPE_PX = 6
