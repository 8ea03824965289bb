import { partKey } from '../../shared-core/kitchen/parts.ts'
import type { KitchenTask, Together } from '../../shared-core/kitchen/queue.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { fitList } from '../parts/fit.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { RingState } from '../parts/ring.tsx'
import { strung } from '../parts/strung.ts'
import type { WallKitchenWords } from '../words/wall-kitchen.ts'
import type { SetKind } from './made-kinds.ts'
import { BLOCK_EM } from './made-kinds.ts'
import type { LineRoom } from './text-lines.ts'
import { fits, shortened, widthOf } from './text-lines.ts'

/** A kind on its rod, as it is painted. */
export interface MadeRod {
  readonly key: string
  readonly name: string
  /** "ALLERGY: milk", whole, in as many lines as it needs; none without one. */
  readonly allergy: readonly string[]
  /** The name has a line of its own below the allergy's. */
  readonly isNameBelow: boolean
  readonly form: SetKind['form']
  readonly heightPx: number
  readonly total: string
  readonly rings: readonly MadeRing[]
  readonly more: string
}

export interface MadeRing {
  readonly key: string
  readonly mark: string
  readonly leftPx: number
  readonly tone: 'plain' | 'act' | 'late'
  readonly isAllergy: boolean
  readonly ring: { readonly fraction: number; readonly state: RingState }
}

/** Between a ring and its mark, and after it. */
const GAP_EM = 0.3

export interface RodInput {
  readonly nowMs: EpochMs
  readonly made: Pick<WallKitchenWords, 'orders'>
  readonly sizes: TextSizes
}

export interface RodParts {
  readonly span: { readonly fromMs: number; readonly toMs: number; readonly widthPx: number }
  readonly fromPx: number
  readonly ringPx: number
  readonly tasks: ReadonlyMap<string, KitchenTask>
  readonly input: RodInput
}

export function rodOf(
  { kind, head, form, heightPx }: SetKind,
  { span, fromPx, ringPx, tasks, input }: RodParts,
): MadeRod {
  const { sizes, nowMs } = input
  const { minPx } = sizes
  const widthOfRing = (mark: string) => ringPx + Math.ceil(widthOf(mark, minPx, 'strong') + 2 * GAP_EM * minPx)
  const morePx = Math.ceil(widthOf('+99', minPx, 'strong'))
  const { placed, hidden } = strung(
    kind.parts.map((part) => ({ key: partKey(part.part), atMs: part.dueAtMs, widthPx: widthOfRing(part.mark) })),
    { ...span, gapPx: Math.round(GAP_EM * minPx), morePx },
  )
  const { allergy, isNameBelow } = head
  const last = allergy[allergy.length - 1]
  const allergyPx = last === undefined || isNameBelow ? 0 : widthOf(last, minPx, 'strong') + BLOCK_EM * minPx
  const roomPx = form === 'above' ? fromPx + span.widthPx - allergyPx : fromPx - minPx / 2
  return {
    key: kind.key,
    form,
    heightPx,
    name: nameOf(kind, { roomPx, fontPx: minPx, weight: 'strong' }, input),
    allergy,
    isNameBelow,
    total: String(kind.parts.length),
    more: hidden > 0 ? `+${hidden}` : '',
    rings: placed.flatMap(({ key, leftPx }) => {
      const task = tasks.get(key)
      const place = { key, leftPx: fromPx + leftPx, isAllergy: allergy.length > 0 }
      return task === undefined ? [] : [{ ...place, mark: task.mark, ...stateOf(task, nowMs) }]
    }),
  }
}

/** As much of what it is as there is room for; what is cut off is counted. */
function nameOf(kind: Together, room: LineRoom, { made }: RodInput): string {
  const parts = made.orders.item({ ...kind, allergies: [] }, 1).split(', ')
  const text = fitList(parts, room, (count) => `+${count}`)
  const isNamed = text !== `+${parts.length}`
  return isNamed && fits(text, room) ? text : shortened(parts[0] ?? '', room)
}

/** Finer than a ring's arc moves nothing is painted. */
const ARC_STEPS = 720

function stateOf({ stage, status, beginAtMs, endAtMs }: KitchenTask, nowMs: EpochMs): Pick<MadeRing, 'tone' | 'ring'> {
  if (status === 'late') return { tone: 'late', ring: { fraction: 0, state: 'late' } }
  if (stage === 'begun') {
    const left = Math.min(1, Math.max(0, (endAtMs - nowMs) / Math.max(1, endAtMs - beginAtMs)))
    const fraction = Math.ceil(left * ARC_STEPS) / ARC_STEPS
    return left > 0
      ? { tone: 'plain', ring: { fraction, state: 'running' } }
      : { tone: 'act', ring: { fraction: 0, state: 'act' } }
  }
  if (status === 'due') return { tone: 'act', ring: { fraction: 0, state: 'act' } }
  return { tone: 'plain', ring: { fraction: 0, state: 'idle' } }
}
