import type { RulerDay } from '../../parts/ruler-view.ts'
import { LoadMark } from './load-mark.tsx'
import type { DayParts } from './parts.ts'
import type { DrawnLoad, PictureView } from './picture-view.ts'
import { xOf } from './picture-view.ts'
import type { Pin } from './wishes.ts'

export interface PictureProps extends DayParts {
  readonly view: PictureView
  readonly day: RulerDay
  readonly widthPx: number
  readonly fontPx: number
  /** A load is under way by hand; null: it was let go of. */
  readonly onDragged: (pin: Pin | null) => void
}

/** The lanes and what is in them. */
export function Picture(props: PictureProps) {
  const { view, widthPx, say, shown, day, plan } = props
  const last = plan.loads[plan.loads.length - 1]
  const first = plan.loads[0]
  const spoken =
    first === undefined || last === undefined
      ? say.nothingMore
      : say.picture.spoken(shown.length, first.kettleAtMs ?? first.inAtMs, last.outAtMs)
  return (
    // Not an image: the loads in it are keys.
    <svg
      class="plan-drawing"
      role="group"
      aria-label={spoken}
      viewBox={`0 0 ${widthPx} ${view.heightPx}`}
      width={widthPx}
      height={view.heightPx}
    >
      <Lanes {...props} />
      <Times {...props} />
      {view.loads.map((drawn) => (
        <Cooling key={drawn.key} drawn={drawn} />
      ))}
      {view.loads.map(({ key, way }) => way !== null && <path key={key} class="plan-way" d={way} />)}
      {view.loads.map(({ key, dips }) =>
        dips.map((x) => (
          <circle
            key={`${key} ${x}`}
            class="plan-dip"
            cx={x}
            cy={view.kettle.top + view.kettle.height / 2}
            r={Math.max(2, Math.min(view.dipPx / 2 - 0.5, view.kettle.height / 3))}
          />
        )),
      )}
      {view.loads.map((drawn) => (
        <LoadMark
          key={drawn.key}
          {...props}
          drawn={drawn}
          isRunning={props.running.some(({ key }) => key === drawn.key)}
        />
      ))}
      <NowLine day={day} widthPx={widthPx} heightPx={view.heightPx} />
    </svg>
  )
}

function Lanes({ view, widthPx, day, wishes }: PictureProps) {
  const x = xOf({ ...day, widthPx })
  const { kettle, boards, shelves } = view
  const free = wishes.forbids.filter(({ varietyId }) => varietyId === null)
  return (
    <>
      {[kettle, boards, ...shelves].map(({ top, height }) => (
        <rect key={top} class="plan-lane" x={0} y={top} width={widthPx} height={height} rx={6} />
      ))}
      <path class="plan-boards" d={boards.area} />
      <path class="plan-limit" d={`M0 ${boards.limitY}H${widthPx}`} />
      {shelves.flatMap(({ shelfId, top, height }) =>
        free
          .filter((forbid) => forbid.shelfId === null || forbid.shelfId === shelfId)
          .map(({ fromMs, toMs }) => (
            <rect
              key={`${shelfId} ${fromMs}`}
              class="plan-free"
              x={x(fromMs)}
              y={top}
              width={Math.max(0, x(toMs) - x(fromMs))}
              height={height}
            />
          )),
      )}
    </>
  )
}

/** From the oven's door until it is cool enough to be sold, under its shelf. */
function Cooling({ drawn: { x, y, width, height, readyX } }: { readonly drawn: DrawnLoad }) {
  const tailY = y + height + 5
  if (readyX <= x + width) return null
  return (
    <>
      <path class="plan-cool" d={`M${x + width} ${tailY}H${readyX}`} />
      <circle class="plan-ready" cx={readyX} cy={tailY} r={3} />
    </>
  )
}

/** The opening and the changeover run down through all lanes. */
function Times({ view, widthPx, day }: PictureProps) {
  const x = xOf({ ...day, widthPx })
  return (
    <>
      {day.orders.map(({ key, atMs }) => (
        <path key={key} class="plan-time" d={`M${x(atMs)} 0V${view.heightPx}`} />
      ))}
      {day.changeover !== undefined && (
        <path class="plan-time plan-over" d={`M${x(day.changeover.fromMs)} 0V${view.heightPx}`} />
      )}
    </>
  )
}

function NowLine({ day, widthPx, heightPx }: Pick<PictureProps, 'day' | 'widthPx'> & { readonly heightPx: number }) {
  if (day.nowMs <= day.fromMs || day.nowMs >= day.toMs) return null
  return <path class="plan-now" d={`M${xOf({ ...day, widthPx })(day.nowMs)} 0V${heightPx}`} />
}
