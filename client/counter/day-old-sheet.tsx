import { useState } from 'preact/hooks'
import { piecesOf } from '../../shared-core/line/lines.ts'
import { dayOldToPut } from '../../shared-core/stock/day-old.ts'
import { Key } from '../parts/key.tsx'
import { topHeight } from './counter-board.tsx'
import type { CounterRod } from './counter-rods.ts'
import { PageKeys } from './page-keys.tsx'
import { rowsPage } from './rows-page.ts'
import type { SheetProps } from './sheets.tsx'
import { Back, SmallKey, Wide } from './small-key.tsx'

/** Pieces of an earlier day, apart from today's: put out, sold one by one or all, or gone another way. */
export function DayOldSheet({ store, state, words, sizes, glass, board }: SheetProps) {
  const [wanted, setPage] = useState(0)
  const { dayOld } = words.jobs
  const toPut = dayOldToPut(state)
  const out = board.rods.filter((rod) => rod.dayOld > 0)
  const roomPx = glass.heightPx - topHeight(sizes) - sizes.keyPx - sizes.namePx * 2 - 4 * sizes.marginPx
  const rowPx = sizes.isPhone ? sizes.keyPx + sizes.namePx * 2 : sizes.keyPx
  const { items, page, pages } = rowsPage(out, Math.floor(roomPx / (rowPx + sizes.gapPx)), wanted)
  return (
    <section class="counter-sheet" role="dialog" aria-label={dayOld.title}>
      <div class="counter-sheet-head">
        <h1>{dayOld.title}</h1>
      </div>
      <div class="counter-keeps">
        {out.length === 0 && <p>{dayOld.nothing}</p>}
        {items.map((rod) => (
          <DayOldRow key={rod.varietyId} rod={rod} store={store} words={words} />
        ))}
      </div>
      <div class="counter-keys">
        {toPut.length > 0 && (
          <Wide share={1}>
            <Key
              label={dayOld.putOut(piecesOf(toPut))}
              detail={words.line.contents(toPut)}
              tone="act"
              onPress={() => store.send({ type: 'dayOldIn', lines: toPut })}
            />
          </Wide>
        )}
        {pages > 1 && <PageKeys page={page} pages={pages} words={words} onPage={setPage} direction="across" />}
        <Back label={words.counter.back} onPress={() => board.openSheet(null)} />
      </div>
    </section>
  )
}

function DayOldRow({ rod, store, words }: { rod: CounterRod } & Pick<SheetProps, 'store' | 'words'>) {
  const { varietyId, name, dayOld: pieces } = rod
  const { dayOld } = words.jobs
  const take = (fate: 'sold' | 'kitchen' | 'wasted' | 'given', some: number) =>
    store.send({ type: 'dayOldOut', varietyId, pieces: some, fate })
  const others = [
    ['kitchen', dayOld.kitchen],
    ['given', dayOld.given],
    ['wasted', dayOld.wasted],
  ] as const
  return (
    <div class="counter-keep" data-day-old={varietyId}>
      <div class="counter-keep-text counter-day-old">
        <strong>{words.line.contents([{ varietyId, pieces }])}</strong>
      </div>
      <SmallKey label={dayOld.sold(1)} name={dayOld.soldSpoken(1, name)} onPress={() => take('sold', 1)} />
      {pieces > 1 && (
        <SmallKey
          label={dayOld.sold(pieces)}
          name={dayOld.soldSpoken(pieces, name)}
          onPress={() => take('sold', pieces)}
        />
      )}
      {others.map(([fate, label]) => (
        <SmallKey key={fate} label={label} name={dayOld.fateOf(name, label)} onPress={() => take(fate, pieces)} />
      ))}
    </div>
  )
}
