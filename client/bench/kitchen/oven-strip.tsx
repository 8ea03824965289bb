import { Key } from '../../parts/key.tsx'
import { besideRingPx, OrderRing } from '../../parts/order-ring.tsx'
import type { KitchenRoomWords } from '../../words/bench-kitchen.ts'
import { FittedWords } from '../act-key.tsx'
import type { BenchSizes } from '../glass.ts'
import type { SheetRoom } from '../sheet.tsx'
import { GridKey } from '../sheet.tsx'
import type { KitchenLayout } from './kitchen-layout.ts'
import type { OvenGroup, ShelfChoice } from './oven-view.ts'

export interface OvenStripProps {
  readonly groups: readonly OvenGroup[]
  /** Shelves to choose from while rings are chosen; null: what bakes is shown. */
  readonly choices: readonly ShelfChoice[] | null
  /** How many rings are chosen, and the places that they take. */
  readonly chosenCount: number
  readonly chosenSlots: number
  readonly layout: KitchenLayout
  readonly sizes: BenchSizes
  readonly words: KitchenRoomWords
  readonly room: Pick<SheetRoom, 'gapPx'>
  readonly onGroup: (group: OvenGroup) => void
  readonly onShelf: (shelf: ShelfChoice) => void
}

/** The oven below the rods: a countdown ring for what bakes together; while rings are chosen, the shelves they may go into. */
export function OvenStrip(props: OvenStripProps) {
  const { choices, groups, layout, words, room } = props
  const { ovenColumns, ovenRows, headPx } = layout
  if (ovenRows === 0) return null
  const places = ovenColumns * ovenRows
  const cells =
    choices === null
      ? groups.slice(0, places).map((group) => <Group key={group.key} {...props} group={group} />)
      : choices.slice(0, places).map((shelf) => <Shelf key={shelf.shelfId} {...props} shelf={shelf} />)
  return (
    <section class="kitchen-oven" aria-label={words.kitchen.oven}>
      <div class="kitchen-rod-head" style={{ height: `${headPx}px`, lineHeight: `${headPx}px` }}>
        <strong>{words.kitchen.oven}</strong>
        <span class="bench-quiet">{choices === null ? moreText(props, places) : words.kitchen.chosenHint}</span>
      </div>
      <div class="kitchen-oven-cells" style={{ gap: `${room.gapPx}px` }}>
        {cells}
      </div>
    </section>
  )
}

function moreText({ groups, words }: OvenStripProps, places: number): string {
  return groups.length > places ? words.kitchen.others(groups.length - places) : ''
}

/** The ring in its key; the space left for words follows from both. */
const RING_IN_KEY = 0.84
const PAD_MM = 5

function Group({ group, layout, sizes, words, onGroup }: OvenStripProps & { readonly group: OvenGroup }) {
  const { ringPx, ovenCellPx } = layout
  const sizePx = Math.round(ringPx * RING_IN_KEY)
  const { what, when, allergy, marked, items, tone, ring, isAllergy } = group
  const mark = onlyMark(group, sizePx, sizes.minPx)
  const contents = [allergy, mark === '' ? marked : '', items].filter((text) => text !== '')
  const stripesPx = tone === 'late' ? PAD_MM * sizes.mmPx : 0
  const room = {
    widthPx: ovenCellPx - sizePx - PAD_MM * sizes.mmPx - stripesPx,
    heightPx: ringPx * RING_IN_KEY,
    actPx: sizes.labelPx,
    minPx: sizes.minPx,
    moreText: words.bench.shelf.more,
    allText: '',
  }
  return (
    <div
      class="bench-act kitchen-group"
      style={{ width: `${ovenCellPx}px`, height: `${ringPx}px` }}
      data-group={group.marks.join(' ')}
    >
      <Key
        tone={tone}
        shape="ring"
        name={[what, when, allergy, marked, items].filter((text) => text !== '').join(', ')}
        onPress={() => onGroup(group)}
      >
        <OrderRing {...ring} mark={mark} size={sizePx} isAllergy={isAllergy} />
        <span class="kitchen-group-words">
          <FittedWords view={{ what, when, contents, notes: [] }} room={room} />
        </span>
      </Key>
    </div>
  )
}

/** Of several, none: they stand beside it. */
function onlyMark({ marks, isAllergy }: OvenGroup, sizePx: number, minPx: number): string {
  const [mark = '', ...others] = marks
  return others.length === 0 && besideRingPx(mark, sizePx, isAllergy, minPx) === 0 ? mark : ''
}

function Shelf({
  shelf,
  chosenCount,
  chosenSlots,
  layout,
  sizes,
  words,
  onShelf,
}: OvenStripProps & { readonly shelf: ShelfChoice }) {
  const { kitchen, line } = words
  const isRoom = shelf.free >= chosenSlots
  return (
    <GridKey
      item={{
        id: `shelf ${shelf.shelfId}`,
        label: kitchen.into(chosenCount, line.shelf(shelf.shelfId)),
        details: [shelf.free === 0 ? kitchen.noPlace : kitchen.placesFree(shelf.free)],
        tone: isRoom ? 'act' : 'plain',
        onPress: () => onShelf(shelf),
      }}
      widthPx={layout.ovenCellPx}
      heightPx={layout.ringPx}
      sizes={sizes}
    />
  )
}
