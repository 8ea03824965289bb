import { useState } from 'preact/hooks'
import { lastLoadTexts } from '../parts/afternoon.ts'
import { afternoonWords } from '../words/afternoon.ts'
import { topHeight } from './counter-board.tsx'
import { PageKeys } from './page-keys.tsx'
import { rowsPage } from './rows-page.ts'
import type { SheetProps } from './sheets.tsx'
import { Back } from './small-key.tsx'

/** Rows of text, in sizes of a name; under them the sentence and the key. */
const ROW = 1.7
const HEAD_ROWS = 5

/** What remains for the afternoon, those that least surely last first, and what the last loads should carry more of. */
export function AfternoonSheet({ words, sizes, glass, board }: SheetProps) {
  const [wanted, setPage] = useState(0)
  const say = afternoonWords(words)
  const { afternoon } = board
  // On a phone a row has two lines of small text.
  const rowPx = (sizes.isPhone ? sizes.quietPx * 1.75 : sizes.namePx) * ROW
  const roomPx = glass.heightPx - topHeight(sizes) - sizes.keyPx - HEAD_ROWS * sizes.namePx * ROW - 4 * sizes.marginPx
  const rows = afternoon?.rows ?? []
  const { items, page, pages } = rowsPage(rows, Math.floor(roomPx / rowPx), wanted)
  return (
    <section class="counter-sheet" role="dialog" aria-label={say.title}>
      <div class="counter-sheet-head">
        <h1>{say.title}</h1>
        <p>{afternoon === null ? say.none : lastLoadTexts(afternoon, say)[0]}</p>
        {afternoon?.isGuess === true && <p>{say.guess}</p>}
      </div>
      <div class="counter-alone">
        {afternoon !== null && (
          <table class="counter-table">
            <thead>
              <tr>
                <th>{say.columns.variety}</th>
                <th>{say.columns.left(afternoon.fromMs)}</th>
                <th>{say.columns.lasts}</th>
                {afternoon.more.length > 0 && <th>{say.columns.more}</th>}
              </tr>
            </thead>
            <tbody>
              {items.map(({ varietyId, left, lastsPercent, more }) => (
                <tr key={varietyId}>
                  <th scope="row">{words.names.variety(varietyId)}</th>
                  <td>{say.left(left)}</td>
                  <td>{say.lasts(lastsPercent)}</td>
                  {afternoon.more.length > 0 && <td>{more > 0 && <strong>{say.more(more)}</strong>}</td>}
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </div>
      <div class="counter-keys">
        {pages > 1 && <PageKeys page={page} pages={pages} words={words} onPage={setPage} direction="across" />}
        <Back label={words.counter.back} onPress={() => board.openSheet(null)} />
      </div>
    </section>
  )
}
