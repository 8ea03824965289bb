import { leftOut } from '../../../shared-core/plan/leave-out.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import { Panel } from '../panel.tsx'
import { Reasons } from './loads-table.tsx'
import type { DayParts } from './parts.ts'
import type { Pin } from './wishes.ts'
import { movedInTime, pinOf, withForbid, withoutPin, withPin } from './wishes.ts'

const STEP_MINUTES = 5

/** The chosen load: its times, why it is there, and everything that people may say about it. */
export function ChosenPanel(parts: DayParts) {
  const { shown, chosen, say, words, shop, live, wishes, onWishes, onChoose } = parts
  const one = shown.find(({ key }) => key === chosen)
  if (one === undefined) return null
  const { load, key } = one
  const pin = pinOf(one)
  const set = (next: Pin) => onWishes(withPin(wishes, next))
  const leaveOut = () => {
    onChoose(null)
    onWishes(load.isPinned ? withoutPin(wishes, key) : withForbid(wishes, leftOut(load)))
  }
  return (
    <Panel part="plan-chosen" title={say.chosen.title(words.line.shelf(load.shelfId), load.inAtMs)} isWide>
      <p>
        <strong>{words.line.contents(load.lines)}</strong>
        <br />
        {say.chosen.times(load)}
      </p>
      <Reasons load={load} say={say} />
      <div class="desk-line">
        <button type="button" onClick={() => set(movedInTime(pin, -STEP_MINUTES, live.nowMs))}>
          {say.chosen.earlier}
        </button>
        <button type="button" onClick={() => set(movedInTime(pin, STEP_MINUTES, live.nowMs))}>
          {say.chosen.later}
        </button>
        <label class="desk-line">
          {say.chosen.shelf}
          <select
            value={load.shelfId}
            onChange={(event) => {
              const to = inUse(shop.shelves).find(({ id }) => id === event.currentTarget.value)
              if (to !== undefined) set({ ...pin, shelfId: to.id })
            }}
          >
            {inUse(shop.shelves).map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        {load.isPinned ? (
          <button type="button" onClick={() => onWishes(withoutPin(wishes, key))}>
            {say.chosen.unpin}
          </button>
        ) : (
          <button type="button" onClick={() => set(pin)}>
            {say.chosen.pin}
          </button>
        )}
        <button type="button" onClick={leaveOut}>
          {say.chosen.leaveOut}
        </button>
        {!load.isPinned &&
          load.lines.length > 1 &&
          load.lines.map(({ varietyId }) => (
            <button
              key={varietyId}
              type="button"
              onClick={() => onWishes(withForbid(wishes, { ...leftOut(load), shelfId: null, varietyId }))}
            >
              {say.chosen.notThen(words.names.variety(varietyId))}
            </button>
          ))}
        <button type="button" onClick={() => onChoose(null)}>
          {say.chosen.putAway}
        </button>
      </div>
    </Panel>
  )
}
