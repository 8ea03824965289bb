import { addressOf } from '../place.ts'
import { MixSheet } from './mix-sheet.tsx'
import { withinOf } from './pages.ts'
import type { RoomParts } from './room.ts'
import { sheetsOf } from './sheet-view.ts'

/** All mix sheets of a day: looked at here, printed one mix a page. */
export function SheetsPage(parts: RoomParts & { readonly date: string }) {
  const { state, shop, words, say, date } = parts
  const sheets = sheetsOf(state.mixes.values(), date, shop)
  if (sheets.length === 0)
    return (
      <p>
        {say.sheets.none(words.times.date(date))}{' '}
        <a href={addressOf('dough', withinOf('day', date))}>{words.times.date(date)}</a>
      </p>
    )
  return (
    <>
      <div class="desk-line desk-noprint">
        <button type="button" class="desk-strong" onClick={() => window.print()}>
          {say.sheets.print}
        </button>
        <span class="desk-quiet">{say.sheets.lead}</span>
      </div>
      {sheets.map((sheet) => (
        <MixSheet key={sheet.mix.id} {...parts} sheet={sheet} />
      ))}
    </>
  )
}
