import type { SlotUse } from '../../shared-core/kitchen/slots-now.ts'
import { capitalised } from '../words/joined.ts'
import type { Box } from './layout.ts'
import type { MadeInput } from './made-view.ts'
import type { RowText } from './oven-row.ts'
import { SOON_MS } from './oven-row.ts'
import type { SetRows } from './rows-fit.ts'
import { rowsThatFit } from './rows-fit.ts'
import { whenText } from './when-text.ts'

/** What bakes of the second menu as rows with rings: what went in together is one of them. */
export function madeInOven(
  uses: readonly SlotUse[],
  box: Box,
  input: MadeInput,
): { readonly set: SetRows; readonly hidden: number } {
  const groups = groupsOf(uses)
  const { shown, ...set } = rowsThatFit(
    groups.map((group) => rowOf(group, input)),
    groups.map(([first]) => (first === undefined ? null : nextOf(first).atMs)),
    { box, sizes: input.sizes, wall: input.wall },
  )
  return { set, hidden: groups.length - shown.length }
}

/** What is for somebody with an allergy is by itself. */
function groupsOf(uses: readonly SlotUse[]): readonly (readonly SlotUse[])[] {
  const groups = new Map<string, SlotUse[]>()
  for (const use of uses) {
    const { shelfId, inAtMs, outAtMs, turn, allergies, key: own } = use
    const key = [shelfId, inAtMs, outAtMs, turn?.atMs ?? '', allergies.length > 0 ? own : ''].join(' ')
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [use])
    else group.push(use)
  }
  return [...groups.values()]
}

function nextOf({ turn, outAtMs, status }: SlotUse) {
  return turn ?? { what: 'out' as const, atMs: outAtMs, status }
}

function rowOf(group: readonly SlotUse[], { nowMs, words, wall, made }: MadeInput): RowText {
  const [first] = group
  if (first === undefined) throw new RangeError('A group holds at least one thing that bakes.')
  const next = nextOf(first)
  const { shelfId, inAtMs, outAtMs, key } = first
  const said = { act: next.what, items: [], marks: [], shelfId, portionId: null, trays: null }
  const name = capitalised(made.acts.act(said)[1])
  const isSoon = next.status !== 'coming' || next.atMs - nowMs <= SOON_MS / 4
  const state = next.status === 'late' ? 'late' : isSoon ? 'act' : 'plain'
  const left = (outAtMs - nowMs) / Math.max(1, outAtMs - inAtMs)
  const when = state === 'late' ? words.times.late(nowMs - next.atMs) : whenText(next.atMs, nowMs, words)
  const marks = made.acts.marks(group.map(({ mark }) => mark))
  // What it is stands on its rod, where there is room for all of it.
  const hasAllergy = group.some(({ allergies }) => allergies.length > 0)
  return {
    key,
    state,
    what: state === 'late' ? `${name},` : name,
    when,
    whenShort: state === 'late' ? wall.late : when,
    ring: { fraction: Math.min(1, Math.max(0, left)), state: state === 'plain' ? 'running' : state },
    lines: hasAllergy ? marks.map((mark) => `${made.acts.allergyShort} ${mark}`) : marks,
    note: '',
  }
}
