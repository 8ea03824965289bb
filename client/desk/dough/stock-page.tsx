import { useMemo, useState } from 'preact/hooks'
import { shortages } from '../../../shared-core/dough/shortages.ts'
import type { IngredientId } from '../../../shared-core/ids.ts'
import { localDate } from '../../live/clock-text.ts'
import { Panel } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'
import type { RoomParts } from './room.ts'
import { SHORT_DAYS } from './short-panel.tsx'
import type { StockRow } from './stock-view.ts'
import { inBags, readCount, stockRows } from './stock-view.ts'
import { typedWeight } from './typed-weight.ts'

type TypedCounts = ReadonlyMap<IngredientId, string>

/** Ingredients on hand, the weekly count, and what came in. */
export function StockPage(parts: RoomParts) {
  const { store, state, shop, room, say } = parts
  const [typed, setTyped] = useState<TypedCounts>(new Map())
  const short = useMemo(() => shortages(state, shop, room.today, SHORT_DAYS, room.noonOf), [state, shop, room])
  const rows = useMemo(() => stockRows(state, shop, short), [state, shop, short])
  const unit = shop.profile.weight === 'g' ? 'kg' : 'lb'
  const { counts, wrong } = readCount(rows, typed, unit)
  const { columns } = say.stock
  return (
    <Panel part="stock" title={say.stock.title}>
      {rows.length === 0 && <p>{say.stock.none}</p>}
      {rows.length > 0 && (
        <form
          onSubmit={(event) => {
            event.preventDefault()
            if (wrong.size > 0 || counts.length === 0) return
            if (store.send({ type: 'countIngredients', counts }) !== null) setTyped(new Map())
          }}
        >
          <p class="desk-quiet">{say.stock.hint}</p>
          <Sideways name={say.stock.title}>
            <table>
              <thead>
                <tr>
                  <th>{columns.what}</th>
                  <th>{columns.onHand}</th>
                  <th>{columns.counted}</th>
                  <th>{columns.short}</th>
                  <th>{columns.count}</th>
                  <th>{columns.received}</th>
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <Row
                    key={row.ingredient.id}
                    {...parts}
                    row={row}
                    unit={unit}
                    text={typed.get(row.ingredient.id) ?? ''}
                    isWrong={wrong.has(row.ingredient.id)}
                    onText={(text) => setTyped(new Map([...typed, [row.ingredient.id, text]]))}
                  />
                ))}
              </tbody>
            </table>
          </Sideways>
          <div class="desk-line">
            <button type="submit" class="desk-strong" disabled={wrong.size > 0 || counts.length === 0}>
              {say.stock.saveCount(counts.length)}
            </button>
            {wrong.size > 0 && (
              <span class="desk-trouble" role="status">
                {say.stock.unreadable}
              </span>
            )}
          </div>
        </form>
      )}
    </Panel>
  )
}

interface RowProps extends RoomParts {
  readonly row: StockRow
  readonly unit: 'kg' | 'lb'
  readonly text: string
  readonly isWrong: boolean
  readonly onText: (text: string) => void
}

function Row(props: RowProps) {
  const { say, room, words, row, unit, text, isWrong, onText } = props
  const { ingredient, onHand, short } = row
  const bag = ingredient.bag
  const counted = onHand?.countedAtMs ?? null
  return (
    <tr>
      <th scope="row">
        <strong>{ingredient.name}</strong>
        {bag !== null && <span class="desk-quiet"> {say.stock.bag(`${bag.thousandths / 1_000} ${bag.unit}`)}</span>}
      </th>
      <td>{onHand === null ? '–' : <OnHand {...props} milligrams={onHand.milligrams} />}</td>
      <td class="desk-quiet dough-together">
        {counted === null ? say.stock.notCounted : words.times.date(localDate(room.clock, counted))}
      </td>
      <td>
        {short !== null ? (
          <span class="desk-trouble">
            ! {say.stock.shortFor(room.weight(short.shortMilligrams), words.times.date(short.fromDate), short.bags)}
          </span>
        ) : (
          onHand !== null && <span class="desk-quiet">{say.stock.enough}</span>
        )}
      </td>
      <td>
        <input
          class={`desk-short${isWrong ? ' dough-wrong' : ''}`}
          autocomplete="off"
          aria-label={say.stock.countField(ingredient.name)}
          aria-invalid={isWrong}
          placeholder={bag === null ? unit : say.stock.bagsUnit}
          value={text}
          onInput={(event) => onText(event.currentTarget.value)}
        />
      </td>
      <td>
        <Received {...props} />
      </td>
    </tr>
  )
}

function OnHand({ say, room, row, milligrams }: RowProps & { readonly milligrams: number }) {
  const bags = inBags(milligrams, row.ingredient.bag)
  const isUnder = milligrams < 0
  return (
    <>
      <strong class={isUnder ? 'desk-trouble' : undefined}>{room.weight(milligrams)}</strong>
      {bags !== null && (
        <span class="desk-quiet">
          {' '}
          {say.stock.bags(bags.bags, bags.restMilligrams === 0 ? null : room.weight(bags.restMilligrams))}
        </span>
      )}
      {isUnder && <span class="desk-trouble"> {say.stock.under}</span>}
    </>
  )
}

/** A delivery is entered by itself: it adds to what is there. */
function Received({ store, say, row, unit }: RowProps) {
  const { id, name, bag } = row.ingredient
  const [text, setText] = useState('')
  const weight = typedWeight(text, { bag, unit })
  const isReady = weight !== null && weight !== 'none' && weight.thousandths > 0
  const take = () => {
    if (isReady && store.send({ type: 'receiveIngredient', ingredientId: id, weight }) !== null) setText('')
  }
  return (
    <span class="dough-received">
      <input
        class={`desk-short${weight === null ? ' dough-wrong' : ''}`}
        autocomplete="off"
        aria-label={say.stock.receivedField(name)}
        placeholder={bag === null ? unit : say.stock.bagsUnit}
        value={text}
        onInput={(event) => setText(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return
          // The table's own form is the count.
          event.preventDefault()
          take()
        }}
      />
      <button type="button" disabled={!isReady} aria-label={say.stock.receive(name)} onClick={take}>
        {say.stock.receiveIt}
      </button>
    </span>
  )
}
