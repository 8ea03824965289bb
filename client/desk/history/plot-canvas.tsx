import 'uplot/dist/uPlot.min.css'
import { useEffect, useRef } from 'preact/hooks'
import uPlot from 'uplot'
import type { PlotTheme } from './plot-theme.ts'
import { themeOf } from './plot-theme.ts'

interface PlotCanvasProps {
  /** Days' numbers, then a row of values for each series. */
  readonly data: uPlot.AlignedData
  readonly heightPx: number
  /** Constant for the same data: how it is drawn, in the colours of the page's theme. */
  readonly drawn: (theme: PlotTheme) => Omit<uPlot.Options, 'width' | 'height'>
  /** What it shows, for those who listen. */
  readonly spoken: string
  /** The place in the data that the pointer is over; null: none. */
  readonly onOver?: (place: number | null) => void
  readonly onPick?: (place: number) => void
}

/** A drawing of many values over time. It fills its place's width and follows the page's theme. */
export function PlotCanvas(props: PlotCanvasProps) {
  const { data, heightPx, drawn, spoken } = props
  const place = useRef<HTMLDivElement>(null)
  // The newest ones, without drawing anew for each.
  const heard = useRef(props)
  heard.current = props
  useEffect(() => {
    const element = place.current
    if (element === null) return
    let plot: uPlot | null = null
    const draw = () => {
      plot?.destroy()
      plot = plotIn(element, { data, heightPx, options: drawn(themeOf(element)), heard: () => heard.current })
    }
    draw()
    const sized = new ResizeObserver(() => plot?.setSize({ width: element.clientWidth, height: heightPx }))
    sized.observe(element)
    const themed = new MutationObserver(draw)
    themed.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme', 'data-print'] })
    return () => {
      sized.disconnect()
      themed.disconnect()
      plot?.destroy()
    }
  }, [data, heightPx, drawn])
  return <div ref={place} class="history-plot" role="img" aria-label={spoken} style={{ height: `${heightPx}px` }} />
}

interface Plotted {
  readonly data: uPlot.AlignedData
  readonly heightPx: number
  readonly options: Omit<uPlot.Options, 'width' | 'height'>
  readonly heard: () => PlotCanvasProps
}

function plotIn(element: HTMLElement, { data, heightPx, options, heard }: Plotted): uPlot {
  const over = (plot: uPlot) => heard().onOver?.(plot.cursor.idx ?? null)
  const plot = new uPlot(
    {
      ...options,
      width: element.clientWidth,
      height: heightPx,
      legend: { show: false },
      cursor: { y: false, points: { show: false }, drag: { x: false, y: false } },
      hooks: { ...options.hooks, setCursor: [over] },
    },
    data,
    element,
  )
  plot.over.addEventListener('click', () => {
    const { idx } = plot.cursor
    if (idx !== null && idx !== undefined) heard().onPick?.(idx)
  })
  return plot
}
