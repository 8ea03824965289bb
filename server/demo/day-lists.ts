import { changeoverList } from '../../shared-core/day/changeover-list.ts'
import { isFirstLoadIn, openingList } from '../../shared-core/day/opening-list.ts'
import type { Ruler } from '../../shared-core/day/ruler.ts'
import { rulerOf } from '../../shared-core/day/ruler.ts'
import type { StepLine } from '../../shared-core/day/step-list.ts'
import { kettleCare } from '../../shared-core/line/kettle-care.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import { durationMs } from '../../shared-core/units.ts'
import { drawFor } from './draw.ts'
import { personFor } from './people.ts'
import type { Move, Scene } from './scene.ts'
import { atMinute, comesUp, minuteOfDay } from './scene.ts'

/** The lists of the day with who did what, the kettle's care, and a word to each other. */
export function listMoves(scene: Scene): readonly Move[] {
  return [...openingSteps(scene), ...changingOver(scene), ...caring(scene), ...notes(scene)]
}

/** A dough that does not float yet is looked at again so much later. */
const LOOK_AGAIN_MS = durationMs(8 * 60_000)
const NOT_PASSED_ONCE_IN = 7
const CHANGEOVER_FROM_MINUTES = 80
const CHANGEOVER_TO_MINUTES = 40
/** The water boils again sooner than the set-up allows for. */
const BOILS_AFTER_MS = 150_000

function openingSteps(scene: Scene): readonly Move[] {
  if (scene.state.day === null || isFirstLoadIn(scene.state)) return []
  return stepsOf(scene, openingList(scene.state, scene.nowMs, rulerHere(scene))?.lines)
}

function changingOver(scene: Scene): readonly Move[] {
  const { state, shop, nowMs } = scene
  const { changeoverFromMinute } = shop.hours
  if (state.day === null || changeoverFromMinute === null) return []
  const minute = minuteOfDay(scene, nowMs)
  const isNear =
    minute > changeoverFromMinute - CHANGEOVER_FROM_MINUTES && minute < changeoverFromMinute + CHANGEOVER_TO_MINUTES
  if (!isNear) return []
  const ruler = rulerHere(scene)
  return [...stepsOf(scene, changeoverList(state, nowMs, ruler)?.lines), ...shelvesOver(scene, ruler)]
}

function rulerHere(scene: Scene): Ruler | null {
  return rulerOf(scene.state, scene.nowMs, (minute) => atMinute(scene, minute), scene.date)
}

/** Each at about its time, by whoever does such things; what is late is done at once. */
function stepsOf(scene: Scene, lines: readonly StepLine[] = []): readonly Move[] {
  const { shop, seed, date } = scene
  return lines
    .filter(({ status }) => status !== 'done')
    .map(({ stepId, doughId, kind, dueAtMs, personId: given }): Move => {
      const key = `step:${date}:${stepId}:${doughId ?? ''}:${kind === 'float-test' ? dueAtMs : ''}`
      const draw = drawFor(seed, key)
      const atMs = dueAtMs + draw.between(-3, 5) * 60_000
      const personId = given ?? personFor(shop, draw)
      if (kind === 'plain' || doughId === null) {
        return { key, who: 'crew', atMs, act: { type: 'doStep', stepId, doughId, personId } }
      }
      const passed = !draw.oneIn(NOT_PASSED_ONCE_IN)
      const lookAgainMs = passed ? null : LOOK_AGAIN_MS
      return { key, who: 'crew', atMs, act: { type: 'testFloat', doughId, passed, lookAgainMs, personId } }
    })
}

/** A shelf that is empty after the last load is the second menu's. */
function shelvesOver({ state, shop, seed, date }: Scene, ruler: Ruler | null): readonly Move[] {
  const fromMs = ruler?.changeover?.fromMs
  if (fromMs === undefined) return []
  const baking = new Set([...state.loads.values()].map(({ shelfId }) => shelfId))
  const over = new Set([...state.marks.values()].flatMap((mark) => (mark.kind === 'shelf-over' ? [mark.shelfId] : [])))
  return inUse(shop.shelves)
    .filter(({ id }) => !baking.has(id) && !over.has(id))
    .map(({ id }) => {
      const key = `over:${date}:${id}`
      const atMs = fromMs + drawFor(seed, key).between(1, 9) * 60_000
      return { key, who: 'crew', atMs, act: { type: 'changeOverShelf', shelfId: id, to: 'secondMenu' } }
    })
}

/** What is due is done by whoever stands at the kettle; a top-up is said to boil when it does. */
function caring({ state, nowMs, date }: Scene): readonly Move[] {
  if (state.day === null) return []
  const { reminders, boilsAgainAtMs } = kettleCare(state, nowMs)
  const due = reminders
    .filter(({ isDue }) => isDue)
    .map(({ care, atMs }): Move => {
      return { key: `care:${care}:${atMs ?? date}`, who: 'crew', atMs: nowMs, act: { type: 'care', care } }
    })
  const cold = Math.max(state.cares.get('topUp')?.atMs ?? 0, state.cares.get('change')?.atMs ?? 0)
  if (boilsAgainAtMs === null || cold === 0) return due
  const act = { type: 'care', care: 'boiling' } as const
  return [...due, { key: `boils:${cold}`, who: 'crew', atMs: cold + BOILS_AFTER_MS, act }]
}

const NOTES = [
  { minute: 5 * 60 + 35, text: 'Rye is slow today' },
  { minute: 6 * 60 + 20, text: 'School fetches its box at 7:30' },
  { minute: 14 * 60 + 20, text: 'Order more poppy' },
] as const
/** Read by everybody, and wiped off. */
const READ_AFTER_MINUTES = 150

function notes(scene: Scene): readonly Move[] {
  const { state, date } = scene
  if (state.day === null) return []
  const written = NOTES.map(({ minute, text }, index): Move => {
    return {
      key: `note:${date}:${index}`,
      who: 'crew',
      once: true,
      atMs: atMinute(scene, minute),
      act: { type: 'writeNote', text },
    }
  }).filter(({ atMs }) => comesUp(scene, atMs))
  const read = [...state.notes.values()].map(({ id, atMs }): Move => {
    return {
      key: `read:${id}`,
      who: 'crew',
      atMs: atMs + READ_AFTER_MINUTES * 60_000,
      act: { type: 'clearNote', noteId: id },
    }
  })
  return [...written, ...read]
}
