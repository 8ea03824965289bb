import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { GlassSize } from '../parts/glass-size.ts'
import type { KeyTone } from '../parts/key.tsx'
import { Key } from '../parts/key.tsx'
import type { BenchWords } from '../words/bench.ts'
import { FittedWords } from './act-key.tsx'
import type { BenchSizes } from './glass.ts'
import { pageOf } from './pages.ts'
import { splitRoom } from './sheets/split.ts'

/** What every sheet is made with. Sheets cover the line, and close by themselves when nobody touches them. */
export interface SheetParts {
  readonly words: BenchWords
  readonly sizes: BenchSizes
  readonly room: SheetRoom
  /** What the line calls for while the sheet hides it; null when nothing is due soon. */
  readonly calling: string | null
  readonly onClose: () => void
}

/** The space under a sheet's heading, in rows of keys. */
export interface SheetRoom {
  readonly widthPx: number
  readonly keyPx: number
  readonly gapPx: number
  readonly marginPx: number
  readonly rows: number
  readonly rowPx: number
}

/** Least height of a page on which two rows of keys stand under the heading; a lower one scrolls. */
const ROWS_MIN = 3

export function sheetRoom(glass: GlassSize, layout: Pick<SheetRoom, 'keyPx' | 'gapPx' | 'marginPx'>): SheetRoom {
  const { keyPx, gapPx, marginPx } = layout
  const bodyPx = glass.heightPx - 2 * marginPx - keyPx - gapPx
  const rows = Math.max(ROWS_MIN, Math.floor((bodyPx + gapPx) / (keyPx + gapPx)))
  const rowPx = Math.max(keyPx, Math.floor((bodyPx - (rows - 1) * gapPx) / rows))
  return { widthPx: glass.widthPx - 2 * marginPx, keyPx, gapPx, marginPx, rows, rowPx }
}

export interface SheetProps extends SheetParts {
  readonly title: string
  readonly detail?: string | undefined
  /** Keys beside the heading. */
  readonly keys?: ComponentChildren
  /** On the way back, where it does not lead to the line. */
  readonly backLabel?: string | undefined
  readonly children: ComponentChildren
}

/** A sheet over the line: heading, keys of its own, and the way back at the same place each time. */
export function Sheet({ title, detail, keys, backLabel, children, words, room, calling, onClose }: SheetProps) {
  const style = {
    '--margin': `${room.marginPx}px`,
    '--gap': `${room.gapPx}px`,
    '--key': `${room.keyPx}px`,
  }
  const isNarrow = splitRoom(room).isNarrow
  return (
    <section
      class={isNarrow ? 'bench-sheet bench-sheet-narrow' : 'bench-sheet'}
      style={style}
      role="dialog"
      // The line is not drawn under it: there is nothing behind that could be reached.
      aria-modal="true"
      aria-label={title}
    >
      <header class="bench-sheet-head">
        <div class="bench-sheet-title">
          <h1 class="bench-sheet-name">{title}</h1>
          {detail !== undefined && <div class="bench-quiet">{detail}</div>}
          {calling !== null && (
            <div class="bench-calling" data-block="act" role="status">
              {calling}
            </div>
          )}
        </div>
        {keys}
        <div class="bench-sheet-back">
          <Key tone="strong" onPress={onClose}>
            <span class="bench-small bench-strong">{backLabel ?? words.bench.sheet.back}</span>
          </Key>
        </div>
      </header>
      <div class="bench-sheet-body">{children}</div>
    </section>
  )
}

export interface GridItem {
  readonly id: string
  readonly label: string
  readonly details?: readonly string[] | undefined
  readonly tone?: KeyTone | undefined
  readonly chosen?: boolean | undefined
  /** Why it cannot be pressed, in place of the details. */
  readonly refusal?: string | undefined
  readonly onPress: () => void
}

export interface KeyGridProps extends Pick<SheetParts, 'words' | 'sizes' | 'room'> {
  readonly items: readonly GridItem[]
  readonly columns: number
  readonly rows: number
  readonly widthPx: number
  /** What is shown instead when there are no items. */
  readonly nothing?: string | undefined
}

/** Keys in a rectangle; where they do not fit, arrow keys turn the page. */
export function KeyGrid(props: KeyGridProps) {
  const { items, columns, rows, widthPx, nothing, words, sizes, room } = props
  const [wanted, setWanted] = useState(0)
  const { items: shown, page, pages } = pageOf(items, { places: Math.max(3, columns * rows), arrows: 2 }, wanted)
  const cellPx = Math.floor((widthPx - (columns - 1) * room.gapPx) / columns)
  const { sheet } = words.bench
  const cell = { widthPx: cellPx, heightPx: room.rowPx, sizes }
  const style = {
    width: `${widthPx}px`,
    gridTemplateColumns: `repeat(${columns}, ${cellPx}px)`,
    gridAutoRows: `${room.rowPx}px`,
  }
  const turn = (by: 1 | -1) => setWanted(Math.min(pages - 1, Math.max(0, page + by)))
  return (
    <div class="bench-grid" style={style}>
      {items.length === 0 && nothing !== undefined && <div class="bench-quiet bench-nothing">{nothing}</div>}
      {shown.map((item) => (
        <GridKey key={item.id} item={item} {...cell} />
      ))}
      {pages > 1 && (
        <>
          <PageKey label="▲" name={sheet.earlier} onPress={page > 0 ? () => turn(-1) : null} />
          <PageKey
            label="▼"
            name={`${sheet.further}, ${sheet.page(page + 1, pages)}`}
            onPress={page < pages - 1 ? () => turn(1) : null}
          />
        </>
      )}
    </div>
  )
}

interface GridKeyProps {
  readonly item: GridItem
  readonly widthPx: number
  readonly heightPx: number
  readonly sizes: BenchSizes
}

export function GridKey({ item, widthPx, heightPx, sizes }: GridKeyProps) {
  const { label, details = [], tone, chosen, refusal, onPress } = item
  const view = { what: label, when: '', contents: refusal === undefined ? details : [refusal], notes: [] }
  const room = {
    widthPx: widthPx - GRID_PAD_MM.across * sizes.mmPx,
    heightPx: heightPx - GRID_PAD_MM.up * sizes.mmPx,
    actPx: sizes.labelPx,
    minPx: sizes.minPx,
    moreText: (count: number) => `+${count}`,
    allText: '',
  }
  return (
    <div class="bench-cell" style={{ width: `${widthPx}px`, height: `${heightPx}px` }} data-cell={item.id}>
      <Key
        tone={refusal === undefined ? tone : undefined}
        chosen={chosen}
        name={[label, ...details].join(', ')}
        refusal={refusal === undefined ? undefined : ''}
        onPress={onPress}
      >
        <FittedWords view={view} room={room} />
      </Key>
    </div>
  )
}

/** Edges and inner space of a key in a grid, both sides together; `bench.css` has the same. */
const GRID_PAD_MM = { across: 4.4, up: 2.4 } as const

function PageKey({ label, name, onPress }: { label: string; name: string; onPress: (() => void) | null }) {
  return (
    <div class="bench-cell bench-page">
      <Key
        label={label}
        name={name}
        refusal={onPress === null ? '' : undefined}
        onPress={onPress ?? (() => undefined)}
      />
    </div>
  )
}
