import type { KitchenStationId } from '../../../shared-core/ids.ts'
import type { KitchenQueue, KitchenTask, Together } from '../../../shared-core/kitchen/queue.ts'
import type { ItemPart } from '../../../shared-core/orders/order-commands.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { RingState } from '../../parts/ring.tsx'
import type { KitchenRoomWords } from '../../words/bench-kitchen.ts'

/** A rod: one kind of thing, with a ring for each that is to be made at this screen's stations. */
export interface RodView {
  readonly key: string
  /** "Garlic flatbread, no cheese" */
  readonly name: string
  /** "ALLERGY: milk"; "" without one. */
  readonly allergy: string
  /** By due time. */
  readonly rings: readonly RodRing[]
  /** Of the first ring, in words. */
  readonly told: string
  readonly tone: 'plain' | 'act' | 'late'
}

export interface RodRing {
  readonly key: string
  readonly part: ItemPart
  readonly mark: string
  readonly dueAtMs: EpochMs
  /** `away`: the part before it is made at another station. */
  readonly stage: 'away' | 'next' | 'begun'
  readonly isOven: boolean
  readonly isAllergy: boolean
  readonly ring: { readonly fraction: number; readonly state: RingState }
  /** Places that it takes in the oven; 0: none. */
  readonly slots: number
  /** How it stands with it. */
  readonly told: string
  /** All of it in one sentence, for those who listen. */
  readonly name: string
}

export interface RodsParts {
  readonly queue: KitchenQueue
  readonly nowMs: EpochMs
  readonly words: KitchenRoomWords
  /** None: all stations. */
  readonly stations: readonly KitchenStationId[]
}

/** The rods of these stations: those with an allergy first, so that none is off the glass, then by what is due soonest. */
export function rodViews(parts: RodsParts): readonly RodView[] {
  const { queue } = parts
  const tasks = tasksHere(parts)
  const byItem = new Map(queue.together.flatMap((kind) => kind.parts.map(({ part }) => [itemKey(part), kind] as const)))
  const rods = new Map<string, { readonly kind: Together; readonly tasks: KitchenTask[] }>()
  for (const task of tasks) {
    const kind = byItem.get(itemKey(task.part))
    if (kind === undefined) continue
    const rod = rods.get(kind.key)
    if (rod === undefined) rods.set(kind.key, { kind, tasks: [task] })
    else rod.tasks.push(task)
  }
  return [...rods.values()].map(({ kind, tasks: all }) => rodView(kind, all, parts)).sort(byAllergyAndDue)
}

/**
 * What is to be made at these stations. A part that waits for one before it stands here only while that one is made
 * elsewhere: here the item has its ring already.
 */
function tasksHere({ queue, stations }: Pick<RodsParts, 'queue' | 'stations'>): readonly KitchenTask[] {
  const isHere = ({ stationId }: { readonly stationId: KitchenStationId }) =>
    stations.length === 0 || stations.includes(stationId)
  const tasks = queue.stations.filter(isHere).flatMap((station) => station.tasks)
  const atHand = new Set(tasks.filter(({ stage }) => stage !== 'waiting').map(({ part }) => itemKey(part)))
  const first = new Map<string, KitchenTask>()
  for (const task of tasks) {
    const key = itemKey(task.part)
    const known = first.get(key)
    if (task.stage === 'waiting' && (atHand.has(key) || (known !== undefined && known.part.step < task.part.step)))
      continue
    first.set(key, task)
  }
  return [...first.values()].sort((one, other) => one.dueAtMs - other.dueAtMs || (one.key < other.key ? -1 : 1))
}

function itemKey({ orderId, no }: ItemPart): string {
  return `${orderId}:${no}`
}

function rodView(kind: Together, tasks: readonly KitchenTask[], parts: RodsParts): RodView {
  const { orders } = parts.words
  const rings = tasks.map((task) => rodRing(task, parts))
  const [first] = tasks
  const isLate = tasks.some(({ status, stage }) => status === 'late' && stage !== 'waiting')
  const isDue = tasks.some(({ status, stage }) => status === 'due' && stage === 'next')
  return {
    key: kind.key,
    name: orders.item({ ...kind, allergies: [] }, 1),
    allergy: kind.allergies.length === 0 ? '' : orders.allergy(kind.allergies),
    rings,
    told: first === undefined ? '' : `${first.mark}: ${stageText(first, parts)}`,
    tone: isLate ? 'late' : isDue ? 'act' : 'plain',
  }
}

function rodRing(task: KitchenTask, parts: RodsParts): RodRing {
  const { key, part, mark, dueAtMs, oven, allergies, stage } = task
  const { orders, kitchen } = parts.words
  const due = kitchen.item.due(dueAtMs)
  return {
    key,
    part,
    mark,
    dueAtMs,
    stage: stage === 'waiting' ? 'away' : stage,
    isOven: oven !== null,
    isAllergy: allergies.length > 0,
    slots: oven?.slots ?? 0,
    told: stageText(task, parts),
    ring: ringOf(task, parts.nowMs),
    name: [kitchen.item.order(mark), orders.item(task, 1), stageText(task, parts), due].join(', '),
  }
}

function ringOf({ stage, status, beginAtMs, endAtMs }: KitchenTask, nowMs: EpochMs): RodRing['ring'] {
  if (status === 'late' && stage !== 'waiting') return { fraction: 0, state: 'late' }
  if (stage === 'begun') {
    const leftMs = endAtMs - nowMs
    if (leftMs <= 0) return { fraction: 0, state: 'act' }
    return { fraction: Math.min(1, leftMs / Math.max(1, endAtMs - beginAtMs)), state: 'running' }
  }
  return { fraction: 0, state: stage === 'next' && status === 'due' ? 'act' : 'idle' }
}

/** How it stands with one of them: "begun, 40 s left", "in 2 min", "4 min late". */
export function stageText(
  task: KitchenTask,
  { nowMs, words, queue }: Pick<RodsParts, 'nowMs' | 'words' | 'queue'>,
): string {
  const { kitchen, times } = words
  const { stage, status, dueAtMs, beginAtMs, endAtMs } = task
  if (stage === 'waiting') return kitchen.stillAt(stationBefore(task, queue))
  if (status === 'late') return times.late(nowMs - dueAtMs)
  if (stage === 'begun') {
    return endAtMs > nowMs ? kitchen.begun(endAtMs - nowMs) : kitchen.overdue(nowMs - endAtMs)
  }
  return times.when({ atMs: beginAtMs, status: status === 'due' ? 'due' : 'coming' }, nowMs)
}

function stationBefore({ part }: KitchenTask, queue: KitchenQueue): string {
  const at = queue.stations.find(({ tasks }) =>
    tasks.some((task) => task.stage !== 'waiting' && itemKey(task.part) === itemKey(part)),
  )
  return at?.name ?? ''
}

function byAllergyAndDue(one: RodView, other: RodView): number {
  const atMs = (rod: RodView) => rod.rings[0]?.dueAtMs ?? Number.POSITIVE_INFINITY
  const rank = (rod: RodView) => (rod.allergy === '' ? 1 : 0)
  return rank(one) - rank(other) || atMs(one) - atMs(other) || (one.key < other.key ? -1 : 1)
}
