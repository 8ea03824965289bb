import { useMemo } from 'preact/hooks'
import { shortages } from '../../../shared-core/dough/shortages.ts'
import { Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { withinOf } from './pages.ts'
import type { RoomParts } from './room.ts'

/** An order of ingredients comes within the week (common practice, no source). */
export const SHORT_DAYS = 7

/** Ingredients that will not do, the soonest first. */
export function ShortPanel({ state, shop, room, words, say }: RoomParts) {
  const short = useMemo(() => shortages(state, shop, room.today, SHORT_DAYS, room.noonOf), [state, shop, room])
  return (
    <Panel part="short" title={say.days.short}>
      {short.length === 0 ? (
        <p class="desk-quiet">{state.onHand.size === 0 ? say.days.nothingCounted : say.days.noShort}</p>
      ) : (
        <ul class="dough-list">
          {short.map(({ ingredientId, fromDate, shortMilligrams, bags }) => (
            <li key={ingredientId}>
              {say.days.shortLine(
                shop.ingredients.get(ingredientId)?.name ?? say.unknown,
                words.times.date(fromDate),
                room.weight(shortMilligrams),
                bags,
              )}
            </li>
          ))}
        </ul>
      )}
      <p>
        <a href={addressOf('dough', withinOf('stock'))}>{say.days.toStock}</a>
      </p>
    </Panel>
  )
}
