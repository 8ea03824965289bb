import type { DoughRoom } from '../../../shared-core/shop/formula.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { SetUpPart } from '../../words/set-up.ts'
import type { Listed } from './lists.ts'
import { hashOf } from './route.ts'
import type { Telling } from './say-value.ts'
import { hoursSaid, minuteSaid, moneySaid, spanSaid } from './say-value.ts'
import type { SetUpProps } from './set-up-parts.ts'
import { GROUPS, partOf } from './set-up-parts.ts'

/** Every part of the set-up with a line of what it is now: where one looks something up, and where one goes to change it. */
export function Overview(props: SetUpProps) {
  const { say, changes, misfits } = props
  const changed = new Set(changes.map(({ entity }) => partOf(entity)))
  const wrong = new Set(misfits.map(({ entity }) => partOf(entity)))
  return (
    <div class="setup-overview">
      {(Object.keys(GROUPS) as (keyof typeof GROUPS)[]).map((group) => (
        <section key={group}>
          <h2>{say.groups[group]}</h2>
          <ul>
            {GROUPS[group].map((part) => (
              <li key={part}>
                <a href={hashOf({ kind: 'part', part })}>
                  <span class="setup-part-name">
                    {say.parts[part]}
                    {changed.has(part) && <span class="setup-mark"> ● {say.save.changedMark}</span>}
                    {wrong.has(part) && <span class="setup-mark setup-mark-wrong"> ! {say.save.wrongMark}</span>}
                  </span>
                  <span class="setup-hint">{sumOf(part, props)}</span>
                </a>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  )
}

/** What a part comes to, in a few words. */
function sumOf(part: SetUpPart, { draft, words, say, state }: SetUpProps): string {
  const telling = { words, say, shop: draft }
  const { profile, kettle, boards, oven } = draft
  const { sums } = say
  const listed = LISTED.find((one) => one === part)
  if (listed !== undefined) return namesSaid(inUse<Listed>(draft[listed]), say)
  switch (part) {
    case 'shop':
      return profile.name
    case 'hours':
      return hoursSaid(draft.hours, telling)
    case 'counter':
      return say.options.salesFrom[draft.counter.salesFrom]
    case 'oven':
      return `${say.options.ovenKind[oven.kind].name}: ${shelvesSaid(draft, say)}`
    case 'kettle':
      return sums.kettle(kettle.pieces, spanSaid(kettle.cycleMs, telling))
    case 'boards':
      return sums.boards(boards.count, boards.pieces)
    case 'room':
      return draft.mixer === null && draft.cooler === null ? sums.nothing : sums.room(draft.mixer, draft.cooler)
    case 'worth':
      return sums.worth(moneySaid(draft.demand.disappointCents), draft.demand.takeAnotherPercent)
    case 'baking':
      return draft.baking.advice ? say.baking.sums.on : say.baking.sums.off
    case 'usual': {
      const said = inUse(draft.varieties).flatMap(({ usual }) => usual ?? [])
      return said.length === 0 ? sums.nothing : sums.usual(said.reduce((so, usual) => so + usual, 0))
    }
    case 'orders':
      return say.kitchen.sums.orders(draft.orders.dozenPieces, spanSaid(draft.orders.madeInMs, telling))
    case 'kitchen':
      return say.kitchen.sums.kitchen(inUse(draft.kitchenStations).length, inUse(draft.portions).length)
    case 'doughRoom':
      return draft.doughRoom === null ? sums.nothing : doughRoomSaid(draft.doughRoom, telling)
    case 'steps':
      return sums.steps(
        inUse(draft.steps).filter(({ list }) => list === 'opening').length,
        inUse(draft.steps).filter(({ list }) => list === 'changeover').length,
      )
    case 'versions':
      return state.setUps.size === 0 ? '' : sums.toCome(state.setUps.size)
    default:
      return ''
  }
}

/** Parts that are one list of things with names. */
const LISTED = [
  'people',
  'varieties',
  'doughs',
  'toppings',
  'formulas',
  'preparations',
  'ingredients',
  'specialDays',
  'runs',
  'menu',
  'stations',
] as const satisfies readonly (SetUpPart & keyof Shop)[]

const NAMED_MOST = 8

function namesSaid(list: readonly Listed[], { list: words, sums }: SetUpProps['say']): string {
  if (list.length === 0) return words.none
  return list.length > NAMED_MOST ? sums.count(list.length) : list.map(({ name }) => name).join(', ')
}

function doughRoomSaid({ fromMinute, coolerByMinute }: DoughRoom, telling: Telling): string {
  return `${minuteSaid(fromMinute, telling)} – ${minuteSaid(coolerByMinute, telling)}`
}

function shelvesSaid({ oven, shelves }: SetUpProps['draft'], { sums }: SetUpProps['say']): string {
  const used = inUse(shelves)
  const [first] = used
  if (oven.kind === 'hearth') return sums.floor(first?.floorBoards ?? 0)
  const pieces = [...new Set(used.map((shelf) => shelf.pieces))].sort((one, other) => one - other)
  const span = pieces.length > 1 ? `${pieces[0]} – ${pieces[pieces.length - 1]}` : String(pieces[0] ?? 0)
  return sums.shelves(used.length, span)
}
