import { useState } from 'preact/hooks'
import type { OrderReason } from '../../../shared-core/dough/explain-order.ts'
import { orderReasons } from '../../../shared-core/dough/explain-order.ts'
import type { OrderCost, OrderPlace } from '../../../shared-core/dough/order.ts'
import type { Allergen } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import type { OrderDay } from './order-view.ts'
import type { RoomParts } from './room.ts'
import { clockOf } from './room-times.ts'
import type { TimelineRow } from './timeline-view.ts'
import { hourOffsetMs, timelineOf } from './timeline-view.ts'

interface TimelineProps extends RoomParts {
  readonly day: OrderDay
  readonly cost: OrderCost
  readonly onMove: (id: string, to: number) => void
}

const MINUTE_MS = 60_000
const PARTS = ['wash', 'mix', 'wait', 'bench', 'proof'] as const

/** Each mix on its line from the mixer to the cooler; it is moved by its keys, or dragged. */
export function Timeline(props: TimelineProps) {
  const { words, say, room, day, cost } = props
  const [first] = cost.places
  const [dragged, setDragged] = useState<string | null>(null)
  if (first === undefined) return null
  const { rows, hours } = timelineOf(cost, day.tasks, day.rules.washMs, hourOffsetMs(room.clock, first.startAtMs))
  const reasons = orderReasons(day.tasks, cost, day.rules)
  return (
    <>
      <p class="dough-legend desk-small">
        {PARTS.map((part) => (
          <span key={part}>
            <i class={`dough-bar dough-bar-${part}`} /> {say.order.legend[part]}
          </span>
        ))}
        <span>
          <i class="dough-due" /> {say.order.legend.due}
        </span>
      </p>
      <div class="dough-hours" aria-hidden="true">
        {hours.map(({ left, atMs }) => (
          <span key={atMs} style={{ left: `${left}%` }}>
            {words.times.clock(epochMs(atMs))}
          </span>
        ))}
      </div>
      <ol class="dough-timeline">
        {rows.map((row, place) => (
          <Row
            key={row.id}
            {...props}
            row={row}
            place={place}
            of={cost.places[place] ?? first}
            reasons={reasons[place]?.reasons ?? []}
            hours={hours}
            isDragged={dragged === row.id}
            onDrag={setDragged}
            onOver={() => {
              if (dragged !== null && dragged !== row.id) props.onMove(dragged, place)
            }}
          />
        ))}
      </ol>
    </>
  )
}

interface RowProps extends TimelineProps {
  readonly row: TimelineRow
  readonly place: number
  readonly of: OrderPlace
  readonly reasons: readonly OrderReason[]
  readonly hours: readonly { readonly left: number; readonly atMs: number }[]
  readonly isDragged: boolean
  readonly onDrag: (id: string | null) => void
  readonly onOver: () => void
}

function Row(props: RowProps) {
  const { words, say, day, row, place, of, hours, isDragged, onMove, onDrag, onOver } = props
  const mix = day.mixes.get(row.id)
  const name = say.order.mix(place + 1, mix?.formula.name ?? say.unknown, words.times.date(mix?.bakeDate ?? ''))
  return (
    <li
      class={isDragged ? 'dough-dragged' : undefined}
      draggable
      title={say.order.drag}
      onDragStart={() => onDrag(row.id)}
      onDragEnd={() => onDrag(null)}
      onDragOver={(event) => {
        event.preventDefault()
        onOver()
      }}
      onDrop={(event) => event.preventDefault()}
    >
      <div class="dough-order-head">
        <span class="dough-order-keys">
          <button
            type="button"
            aria-label={say.order.earlier(name)}
            disabled={place === 0}
            onClick={() => onMove(row.id, place - 1)}
          >
            ↑
          </button>
          <button
            type="button"
            aria-label={say.order.later(name)}
            disabled={place === day.tasks.length - 1}
            onClick={() => onMove(row.id, place + 1)}
          >
            ↓
          </button>
        </span>
        <strong>{name}</strong>
        <span>{partsOf(props, of).join(' · ')}</span>
        <Reasons {...props} />
      </div>
      <div class="dough-track" aria-hidden="true">
        {hours.map(({ left, atMs }) => (
          <i key={atMs} class="dough-hour" style={{ left: `${left}%` }} />
        ))}
        {row.bars.map(({ part, left, width }) => (
          <i key={part} class={`dough-bar dough-bar-${part}`} style={{ left: `${left}%`, width: `${width}%` }} />
        ))}
        <i class="dough-due" style={{ left: `${row.due}%` }} />
      </div>
    </li>
  )
}

function partsOf(props: RowProps, { startAtMs, latestAtMs, coolerAtMs }: OrderPlace): readonly string[] {
  const { say } = props
  const clock = (atMs: EpochMs) => clockOf(atMs, props)
  return [
    say.order.start(clock(startAtMs)),
    ...(latestAtMs > startAtMs + MINUTE_MS ? [say.order.startLatest(clock(latestAtMs))] : []),
    say.order.coolerAt(clock(coolerAtMs)),
  ]
}

/** What is in it and why it stands where it does; what is in the way stands out. */
function Reasons(props: RowProps) {
  const { words, say, day, of, reasons } = props
  const names = words.desk.today.kettle.allergen
  const task = day.tasks.find(({ id }) => id === of.id)
  const contains = task?.allergens.map((allergen) => names[allergen]) ?? []
  const told = reasons.map((reason) => ({ reason, text: reasonText(reason, words, say) }))
  const plain = told.filter(({ reason }) => !isTrouble(reason)).map(({ text }) => text)
  return (
    <>
      <span class="desk-quiet">
        {[...(contains.length > 0 ? [say.order.contains(contains)] : []), ...plain].join(' · ')}
      </span>
      {told
        .filter(({ reason }) => isTrouble(reason))
        .map(({ reason, text }) => (
          <strong key={reason.code} class="desk-trouble">
            {`! ${text}`}
          </strong>
        ))}
    </>
  )
}

function isTrouble({ code }: OrderReason): boolean {
  return code === 'contact' || code === 'late'
}

function reasonText(reason: OrderReason, words: RoomParts['words'], { order }: RoomParts['say']): string {
  const named = (allergens: readonly Allergen[]) =>
    allergens.map((allergen) => words.desk.today.kettle.allergen[allergen])
  switch (reason.code) {
    case 'bringsLater':
    case 'contact':
    case 'wash':
      return order.reason[reason.code](named(reason.allergens))
    case 'waits':
    case 'benchWaits':
    case 'late':
      return order.reason[reason.code](words.times.span(reason.ms))
    default:
      return order.reason[reason.code]
  }
}
