import { useState } from 'preact/hooks'
import type { DeskParts } from '../desk-screen.tsx'
import { Panel } from '../panel.tsx'
import type { ReadingPlace } from './oven-view.ts'
import { readDegrees, readingPlaces } from './oven-view.ts'

/** The oven's heat as people read it off, by shelf. */
export function OvenPanel(parts: DeskParts) {
  const { state, shop, words } = parts
  const { oven: say } = words.desk.today
  return (
    <Panel part="oven" title={say.title}>
      <p class="desk-quiet">{say.hint}</p>
      <table>
        <tbody>
          {readingPlaces(state, shop).map((place) => (
            <Reading key={place.shelfId ?? ''} {...parts} place={place} />
          ))}
        </tbody>
      </table>
    </Panel>
  )
}

function Reading({ store, shop, words, place }: DeskParts & { readonly place: ReadingPlace }) {
  const { oven: say } = words.desk.today
  const [text, setText] = useState('')
  const unit = shop.profile.temperature
  const degrees = readDegrees(text, unit)
  const { shelfId, last } = place
  const where = shelfId === null ? say.whole : words.line.shelf(shelfId)
  return (
    <tr>
      <td>{where}</td>
      <td class="desk-quiet">{last === null ? say.none : say.reading(last.degrees, last.unit, last.atMs)}</td>
      <td>
        <form
          class="desk-line"
          onSubmit={(event) => {
            event.preventDefault()
            if (degrees !== null && store.send({ type: 'readOven', shelfId, degrees, unit }) !== null) setText('')
          }}
        >
          <input
            class="desk-short"
            inputMode="numeric"
            aria-label={say.degrees(where, unit)}
            placeholder={`°${unit}`}
            value={text}
            onInput={(event) => setText(event.currentTarget.value)}
          />
          <button type="submit" aria-label={`${where}: ${say.record}`} disabled={degrees === null}>
            {say.record}
          </button>
        </form>
      </td>
    </tr>
  )
}
