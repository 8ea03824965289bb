import { Key } from '../parts/key.tsx'
import type { BenchWords } from '../words/bench.ts'
import { ActKey } from './act-key.tsx'
import type { BenchSizes } from './glass.ts'
import type { BenchLayout } from './layout.ts'
import type { ShelfView } from './shelf-view.ts'

export interface OvenProps {
  readonly shelves: readonly ShelfView[]
  readonly heading: string
  readonly layout: BenchLayout
  readonly sizes: BenchSizes
  readonly words: BenchWords
  readonly onPress: (view: ShelfView) => void
  readonly onDiffers: (view: ShelfView) => void
}

/** One key for each shelf, with "differs" beside it where there is room; filled column by column. */
export function Oven(props: OvenProps) {
  const { shelves, heading, layout } = props
  const style = {
    gridTemplateRows: `repeat(${layout.rows}, auto)`,
    gridAutoFlow: layout.form === 'stacked' ? 'row' : 'column',
  }
  return (
    <section class="bench-oven" aria-label={heading}>
      {layout.hasOvenHeading && <h2 class="bench-heading">{heading}</h2>}
      <div class="bench-shelves" style={style}>
        {shelves.map((view) => (
          <Shelf key={view.id} {...props} view={view} />
        ))}
      </div>
    </section>
  )
}

function Shelf({ view, layout, sizes, words, onPress, onDiffers }: OvenProps & { readonly view: ShelfView }) {
  const { shelf } = words.bench
  return (
    <div class="bench-shelf" data-shelf={view.key.shelfId} data-act={view.key.act}>
      <ActKey
        view={view}
        ring={view.ring}
        widthPx={layout.shelfWidthPx}
        heightPx={layout.shelfHeightPx}
        sizes={sizes}
        isDense={layout.columns > 2}
        isUnconfirmed={view.unconfirmed}
        isAtDoor={view.key.atDoor}
        isAdvised={view.isAdvised}
        name={view.name}
        moreText={shelf.more}
        allText={shelf.kinds(view.key.pieces, view.contents.length)}
        onPress={() => onPress(view)}
      />
      {layout.differsBeside && (
        <div class="bench-differs" style={{ width: `${layout.keyPx}px` }}>
          <Key name={shelf.differsOf(view.key.shelfName)} onPress={() => onDiffers(view)}>
            <span class="bench-small">{shelf.differs}</span>
          </Key>
        </div>
      )}
    </div>
  )
}
