import type { TargetedKeyboardEvent, TargetedPointerEvent } from 'preact'
import { useRef } from 'preact/hooks'
import type { PictureProps } from './picture.tsx'
import type { DrawnLoad } from './picture-view.ts'
import type { Pin } from './wishes.ts'
import { movedInTime, pinOf, withPin } from './wishes.ts'

interface MarkProps extends PictureProps {
  readonly drawn: DrawnLoad
  /** In the oven: it is shown, and stays. */
  readonly isRunning: boolean
}

const STEP_MINUTES = 5
/** A hand that only touches trembles so much. */
const SLACK_PX = 5

interface Held {
  readonly x: number
  readonly y: number
  readonly pin: Pin
  /** Where it would be let go of now; null: it was hardly moved. */
  at: Pin | null
}

/** One load: round where it came in, as the keys of the bench; it is chosen, dragged, and moved with the arrow keys. */
export function LoadMark(props: MarkProps) {
  const { drawn, isRunning, chosen, say, words } = props
  const { key, load } = drawn
  const acts = useMoving(props)
  const kinds = ['plan-load', isRunning ? 'is-running' : load.isPinned ? 'is-pinned' : 'is-advised']
  if (chosen === key) kinds.push('is-chosen')
  const name = say.picture.loadName(
    words.line.shelf(load.shelfId),
    load.inAtMs,
    words.line.contents(load.lines),
    load.isPinned && !isRunning,
  )
  if (isRunning) {
    return (
      <g class={kinds.join(' ')}>
        <title>{`${name}, ${say.picture.key.running}`}</title>
        <Shape {...props} />
      </g>
    )
  }
  return (
    <g class={kinds.join(' ')} role="button" tabindex={0} aria-label={name} aria-pressed={chosen === key} {...acts}>
      <title>{name}</title>
      <Shape {...props} />
    </g>
  )
}

function Shape({ drawn, fontPx }: MarkProps) {
  const { x, y, width, height, touchPx, flipX, rows, load } = drawn
  const round = Math.min(14, width / 2)
  return (
    <>
      <rect class="plan-touch" x={x} y={y} width={touchPx} height={height} />
      <path class="plan-body" d={keyPath(x, y, width, height, round)} />
      {flipX !== null && <path class="plan-first" d={keyPath(x, y, flipX - x, height, Math.min(round, flipX - x))} />}
      {rows.map((text, n) => (
        <text key={text} x={x + 6} y={y + 6 + fontPx * (0.9 + n * 1.25)} font-size={fontPx}>
          {text}
        </text>
      ))}
      {load.contacts.length > 0 && <path class="plan-contact" d={`M${x + width - 2} ${y - 7}l7 12h-14z`} />}
    </>
  )
}

/** Round on the left, where the pieces come from. */
function keyPath(x: number, y: number, width: number, height: number, round: number): string {
  return `M${x + round} ${y}H${x + width}V${y + height}H${x + round}Q${x} ${y + height} ${x} ${y + height - round}V${y + round}Q${x} ${y} ${x + round} ${y}Z`
}

/** Handlers that choose and move it. Nothing is moved to before now. */
function useMoving(props: MarkProps) {
  const { drawn, chosen, live, wishes, onWishes, onChoose, onDragged } = props
  const held = useRef<Held | null>(null)
  const keep = (pin: Pin) => {
    onChoose(drawn.key)
    onWishes(withPin(wishes, pin))
  }
  return {
    onClick: () => onChoose(drawn.key),
    onKeyDown: (event: TargetedKeyboardEvent<SVGGElement>) => {
      const next = byKey(event.key, props)
      if (next === null) return
      event.preventDefault()
      if (next === 'choose') onChoose(drawn.key)
      else keep(next)
    },
    onPointerDown: (event: TargetedPointerEvent<SVGGElement>) => {
      // A finger that has not chosen it moves the picture.
      if (event.button !== 0 || (event.pointerType === 'touch' && chosen !== drawn.key)) return
      held.current = { x: event.clientX, y: event.clientY, pin: pinOf(drawn), at: null }
      event.currentTarget.setPointerCapture(event.pointerId)
    },
    onPointerMove: (event: TargetedPointerEvent<SVGGElement>) => {
      const from = held.current
      if (from === null) return
      const [byX, byY] = [event.clientX - from.x, event.clientY - from.y]
      if (from.at === null && Math.abs(byX) < SLACK_PX && Math.abs(byY) < SLACK_PX) return
      from.at = underHand(from.pin, [byX, byY], props)
      onDragged(from.at)
    },
    onPointerUp: () => {
      const at = held.current?.at ?? null
      held.current = null
      onDragged(null)
      if (at !== null) keep(movedInTime(at, 0, live.nowMs))
    },
    onPointerCancel: () => {
      held.current = null
      onDragged(null)
    },
  }
}

function underHand(pin: Pin, [byX, byY]: readonly [number, number], { day, widthPx, view, live }: MarkProps): Pin {
  const minutes = (byX / widthPx) * ((day.toMs - day.fromMs) / 60_000)
  const from = view.shelves.find(({ shelfId }) => shelfId === pin.shelfId)
  const middle = from === undefined ? 0 : from.top + from.height / 2 + byY
  const to = view.shelves.find(({ top, height }) => middle >= top - 5 && middle <= top + height + 5)
  return { ...movedInTime(pin, minutes, live.nowMs), shelfId: to?.shelfId ?? pin.shelfId }
}

/** @returns where an arrow key moves it; null: the key means nothing here */
function byKey(key: string, { drawn, view, live }: MarkProps): Pin | 'choose' | null {
  const pin = pinOf(drawn)
  const place = view.shelves.findIndex(({ shelfId }) => shelfId === pin.shelfId)
  switch (key) {
    case 'ArrowLeft':
      return movedInTime(pin, -STEP_MINUTES, live.nowMs)
    case 'ArrowRight':
      return movedInTime(pin, STEP_MINUTES, live.nowMs)
    case 'ArrowUp':
    case 'ArrowDown': {
      const to = view.shelves[place + (key === 'ArrowUp' ? -1 : 1)]
      return to === undefined ? null : { ...pin, shelfId: to.shelfId }
    }
    case 'Enter':
    case ' ':
      return 'choose'
    default:
      return null
  }
}
