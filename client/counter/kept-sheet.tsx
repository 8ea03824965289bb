import { useState } from 'preact/hooks'
import type { Keep } from '../../shared-core/day/state.ts'
import { Key } from '../parts/key.tsx'
import { topHeight } from './counter-board.tsx'
import type { CounterParts } from './counter-screen.tsx'
import { keptForNobody, keptPage } from './kept-view.ts'
import { PageKeys } from './page-keys.tsx'
import { Back } from './small-key.tsx'

export interface KeptProps extends CounterParts {
  readonly onClose: () => void
}

/** What is kept for people of whom the board knows no order, the longest kept first: hand it over, or release it to be sold. */
export function KeptSheet(props: KeptProps) {
  const { store, state, words, sizes, glass, onClose } = props
  const [wanted, setPage] = useState(0)
  const { kept } = words.counter
  const roomPx = glass.heightPx - topHeight(sizes) - sizes.keyPx - 4 * sizes.marginPx
  // On a phone the words stand over the keys.
  const rowPx = sizes.isPhone ? sizes.keyPx + sizes.namePx * 3 : sizes.keyPx
  const rows = Math.max(1, Math.floor((roomPx - sizes.namePx * 2) / (rowPx + sizes.gapPx)))
  const { keeps, page, pages } = keptPage(keptForNobody(state), rows, wanted)
  return (
    <section class="counter-sheet" role="dialog" aria-label={kept.title}>
      <div class="counter-sheet-head">
        <h1>{kept.title}</h1>
      </div>
      <div class="counter-keeps">
        {keeps.length === 0 && <p>{kept.nothing}</p>}
        {keeps.map((keep) => (
          <KeptRow key={keep.id} keep={keep} store={store} words={words} />
        ))}
      </div>
      <div class="counter-keys">
        {pages > 1 && <PageKeys page={page} pages={pages} words={words} onPage={setPage} direction="across" />}
        <Back label={words.counter.back} onPress={onClose} />
      </div>
    </section>
  )
}

function KeptRow({ keep, store, words }: { keep: Keep } & Pick<CounterParts, 'store' | 'words'>) {
  const { kept } = words.counter
  return (
    <div class="counter-keep" data-keep={keep.id}>
      <div class="counter-keep-text">
        <strong>{words.line.contents(keep.lines)}</strong>
        <span class="counter-quiet">{kept.keptAt(keep.keptAtMs)}</span>
      </div>
      <Key label={kept.handOver} tone="strong" onPress={() => store.send({ type: 'handOver', keepId: keep.id })} />
      <Key label={kept.release} onPress={() => store.send({ type: 'release', keepId: keep.id })} />
    </div>
  )
}
