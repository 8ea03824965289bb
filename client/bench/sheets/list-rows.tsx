import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { useMeasuredWidth } from '../../parts/measured-width.ts'
import { FittedWords } from '../act-key.tsx'
import { pageOf } from '../pages.ts'
import type { SheetParts } from '../sheet.tsx'
import { PageRow } from './page-row.tsx'
import { splitRoom } from './split.ts'

export interface ListRowsProps<Item extends ListItem> extends SheetParts {
  readonly items: readonly Item[]
  readonly nothing: string
  /** What can be done with one, at its right. */
  readonly keysOf: (item: Item) => ComponentChildren
  /** Keys under the rows, beside the arrows. */
  readonly foot?: ComponentChildren
}

export interface ListItem {
  readonly id: string
  readonly title: string
  readonly texts: readonly string[]
}

/** Rows of words, each with its keys; arrow keys turn the page. */
export function ListRows<Item extends ListItem>(props: ListRowsProps<Item>) {
  const { items, nothing, keysOf, foot, words, room } = props
  const [wanted, setWanted] = useState(0)
  // On narrow glass a sheet scrolls and a row's keys stand below its words: all rows are there.
  const { isNarrow } = splitRoom(room)
  const places = isNarrow ? Math.max(2, items.length) : room.rows
  // With keys of its own the row of the arrows is there on every page.
  const split = foot === undefined || isNarrow ? { places, arrows: 1 } : { places: places - 1, arrows: 0 }
  const { items: shown, page, pages } = pageOf(items, split, wanted)
  return (
    <div class="bench-list">
      {items.length === 0 && <div class="bench-nothing">{nothing}</div>}
      {shown.map((item) => (
        <div
          key={item.id}
          class={isNarrow ? 'bench-list-row bench-list-row-narrow' : 'bench-list-row'}
          style={isNarrow ? undefined : { height: `${room.rowPx}px` }}
          data-row={item.id}
        >
          <Said {...props} item={item} />
          {keysOf(item)}
        </div>
      ))}
      <PageRow words={words} room={room} page={page} pages={pages} onTurn={setWanted} foot={foot} />
    </div>
  )
}

function Said({ item, room, sizes }: SheetParts & { readonly item: ListItem }) {
  const [ref, widthPx] = useMeasuredWidth<HTMLDivElement>()
  const view = { what: item.title, when: '', contents: item.texts, notes: [] }
  const fit = { widthPx, heightPx: room.rowPx, actPx: sizes.minPx, minPx: sizes.minPx }
  return (
    <div ref={ref} class="bench-list-words">
      {widthPx > 0 && <FittedWords view={view} room={{ ...fit, moreText: (count) => `+${count}`, allText: '' }} />}
    </div>
  )
}
