import { Ring } from '../parts/ring.tsx'
import type { SetRows, ShelfRow } from './rows-fit.ts'
import { paintedByView } from './same-view.tsx'

export interface OvenPaneProps {
  readonly view: SetRows
}

/** The oven, one row for each shelf: what to do, when, and what is in it. */
export const OvenPane = paintedByView(({ view }: OvenPaneProps) => {
  const { rows, columns, gapPx, rowPx } = view
  const style = {
    gridTemplateColumns: `repeat(${columns}, minmax(0, 1fr))`,
    gridAutoRows: `${rowPx}px`,
    gridGap: `${gapPx}px`,
    '--wall-round': `${Math.round(rowPx / 2)}px`,
  }
  return (
    <div class="wall-shelves" style={style}>
      {rows.map((row) => (
        <Shelf key={row.key} row={row} />
      ))}
    </div>
  )
})

interface ShelfProps {
  readonly row: ShelfRow
}

const Shelf = paintedByView(({ row }: ShelfProps) => {
  const { state, what, when, contents, ring, ringPx, form } = row
  return (
    <div class={`wall-shelf wall-shelf-${state}`} data-block={state === 'plain' ? undefined : state}>
      <Ring {...ring} size={ringPx} />
      <div class={`wall-shelf-words wall-shelf-${form}`}>
        <div class={form === 'tall' ? 'wall-act wall-act-tall' : 'wall-act'}>
          <strong>{what}</strong>
          {when !== '' && <span>{form === 'tall' ? when : ` ${when}`}</span>}
        </div>
        {contents !== '' && <div class="wall-contents">{contents}</div>}
      </div>
    </div>
  )
})
