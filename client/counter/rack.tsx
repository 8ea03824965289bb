import type { VarietyId } from '../../shared-core/ids.ts'
import { Key } from '../parts/key.tsx'
import { FAST_TAP_MS } from '../parts/press-guard.ts'
import { Rod } from '../parts/rod.tsx'
import type { CounterWords } from '../words/counter.ts'
import { PageKeys } from './page-keys.tsx'
import type { RackLayout } from './rack-layout.ts'
import type { RackView, RodCell } from './rack-view.ts'

export interface RackProps {
  readonly view: RackView
  readonly layout: RackLayout
  readonly words: CounterWords
  readonly onTouch: (varietyId: VarietyId) => void
  readonly onPage: (page: number) => void
}

/** The rack of rods: each row stands on a plank that runs the whole width. */
export function Rack({ view, layout, words, onTouch, onPage }: RackProps) {
  const { columns, rows, rowPx, rowGapPx, plankPx, rodPx, cellPx } = layout
  const style = {
    '--cell': `${cellPx}px`,
    '--row': `${rowPx}px`,
    '--row-gap': `${rowGapPx}px`,
    '--pad': `${layout.padPx}px`,
    '--plank': `${plankPx}px`,
    '--rod': `${rodPx.height}px`,
  }
  const lines = Array.from({ length: rows }, (_, row) => view.cells.slice(row * columns, (row + 1) * columns))
  return (
    <main class="counter-rack" style={style} aria-label={words.counter.rod.rack}>
      <div class="counter-rows">
        {lines.map((cells, row) => (
          // A row is its place in the rack and nothing else.
          <div key={`row ${row}`} class="counter-row">
            <div class="counter-plank" />
            {cells.map((cell) => (
              <RodKey key={cell.varietyId} cell={cell} layout={layout} onTouch={() => onTouch(cell.varietyId)} />
            ))}
          </div>
        ))}
      </div>
      {view.pages > 1 && (
        <PageKeys page={view.page} pages={view.pages} words={words} onPage={onPage} direction={layout.pagesLie} />
      )}
    </main>
  )
}

function RodKey({ cell, layout, onTouch }: { cell: RodCell; layout: RackLayout; onTouch: () => void }) {
  const { nameLines, pieces, keptPieces, onTheWay, moreTone } = cell
  return (
    <div class={classOf(cell)} data-variety={cell.varietyId}>
      <Key name={cell.spoken} chosen={cell.inHand > 0} sameTouchMs={FAST_TAP_MS} onPress={onTouch}>
        <span class="counter-stock">
          <Rod
            pieces={pieces}
            kept={keptPieces}
            onTheWay={onTheWay}
            isPlanned={cell.isPlanned}
            maxRings={layout.maxRings}
            height={layout.rodPx.height}
            width={layout.rodPx.width}
          />
          <span class="counter-beside">
            {cell.apart !== '' && <span class="counter-quiet">{cell.apart}</span>}
            <span class="counter-told">
              {cell.about !== '' && <span class="counter-quiet">{cell.about}</span>}
              <span class={numberClass(cell)}>{pieces}</span>
            </span>
            {cell.inHandText === '' ? (
              <span class="counter-quiet">{cell.known}</span>
            ) : (
              <span class="counter-tag">{cell.inHandText}</span>
            )}
          </span>
        </span>
        <span class="counter-label">
          <span class="counter-name">
            {nameLines.map((line) => (
              <span key={line}>{line}</span>
            ))}
          </span>
          {cell.when !== '' && <span class="counter-text">{cell.when}</span>}
          {cell.more !== '' && <span class={`counter-text counter-more-${moreTone}`}>{cell.more}</span>}
        </span>
      </Key>
    </div>
  )
}

/** A number that is known to the piece is bold; one that is an estimate is not. */
function numberClass({ isTrouble, about }: RodCell): string {
  return [
    'counter-number',
    ...(about === '' ? [] : ['counter-number-about']),
    ...(isTrouble ? ['counter-trouble'] : []),
  ].join(' ')
}

function classOf({ inHand, isTrouble }: RodCell): string {
  return ['counter-cell', ...(inHand > 0 ? ['counter-in-hand'] : []), ...(isTrouble ? ['counter-short'] : [])].join(' ')
}
