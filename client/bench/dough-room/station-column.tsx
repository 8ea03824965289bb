import type { DoughRoomWords } from '../../words/bench-dough.ts'
import { ActKey } from '../act-key.tsx'
import type { BenchSizes } from '../glass.ts'
import { GridKey } from '../sheet.tsx'
import type { RoomLayout } from './room-layout.ts'
import { fitting } from './room-layout.ts'
import type { RoomItem } from './room-parts.ts'
import type { StationView } from './room-view.ts'
import { whenOf } from './room-view.ts'
import { StationSign } from './station-sign.tsx'

export interface StationColumnProps {
  readonly view: StationView
  readonly layout: RoomLayout
  readonly sizes: BenchSizes
  readonly words: DoughRoomWords
  readonly onPress: (item: RoomItem) => void
  readonly onMore: () => void
}

/** A station of the way of the dough: its sign, and a key for each mix or batch that stands there. */
export function StationColumn({ view, layout, sizes, words, onPress, onMore }: StationColumnProps) {
  const { shown, more } = fitting(view.items, layout.items)
  const { columnPx, itemPx } = layout
  return (
    <section
      class="dough-station"
      style={{ width: `${columnPx}px` }}
      data-room-station={view.id}
      aria-label={view.title}
    >
      <header class="dough-station-head">
        {!layout.isCramped && <StationSign station={view.id} sizePx={Math.round(1.5 * sizes.minPx)} />}
        <h2 class="bench-strong">{view.title}</h2>
        {view.short !== '' && (
          <span class="bench-quiet dough-station-detail" title={view.detail}>
            {view.short}
          </span>
        )}
      </header>
      {view.items.length === 0 && <div class="bench-quiet">{view.nothing}</div>}
      {shown.map((item) => (
        <div key={item.id} data-item={item.id}>
          <ActKey
            view={{ what: item.what, when: whenOf(item), contents: item.contents, notes: [], tone: item.tone }}
            // In so small a ring no time can be read: it stands beside it.
            ring={layout.isCramped ? null : { fraction: item.ring.fraction, state: item.ring.state }}
            widthPx={columnPx}
            heightPx={itemPx}
            sizes={sizes}
            isDense
            name={[item.what, whenOf(item), ...item.contents].filter((text) => text !== '').join(', ')}
            moreText={words.bench.shelf.more}
            allText=""
            onPress={() => onPress(item)}
          />
        </div>
      ))}
      {more > 0 && (
        <GridKey
          item={{ id: `more ${view.id}`, label: words.room.way.more(more), onPress: onMore }}
          widthPx={columnPx}
          heightPx={itemPx}
          sizes={sizes}
        />
      )}
    </section>
  )
}
