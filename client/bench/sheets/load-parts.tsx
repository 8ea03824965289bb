import { useState } from 'preact/hooks'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { Batch, Line, Load, State } from '../../../shared-core/day/state.ts'
import type { ShelfId, VarietyId } from '../../../shared-core/ids.ts'
import { contentsByLoad } from '../../../shared-core/line/contents.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import { shelvesInOrder } from '../../../shared-core/line/turn.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { stepDown, stepUp } from '../../parts/steps.ts'
import type { GridItem, SheetParts } from '../sheet.tsx'
import { GridKey, KeyGrid } from '../sheet.tsx'
import { LineRows } from './line-rows.tsx'
import { PiecesStepper } from './pieces-stepper.tsx'
import { splitRoom } from './split.ts'

export interface LoadPartProps extends SheetParts {
  readonly state: State
  readonly shop: Shop
  readonly load: Load
  readonly send: (act: Act) => void
}

/** Drawn by colour: some of a load comes out now, the rest bakes on. */
export function SomeOutPart(props: LoadPartProps) {
  const { load, words, sizes, room, send, onClose, shop } = props
  const inside = contentsOf(props)
  const [out, setOut] = useState<ReadonlyMap<VarietyId, number>>(new Map())
  const { contents } = words.bench
  const { leftPx } = splitRoom(room)
  const taken = (id: VarietyId) => Math.min(out.get(id) ?? 0, insideOf(inside, id))
  const set = (id: VarietyId, pieces: number) => setOut(new Map(out).set(id, pieces))
  const range = (id: VarietyId) => ({ step: shop.boards.pieces, min: 0, max: insideOf(inside, id) })
  const lines = inside
    .map(({ varietyId }) => ({ varietyId, pieces: taken(varietyId) }))
    .filter((line) => line.pieces > 0)
  const all = piecesOf(inside)
  const item: GridItem = {
    id: 'take',
    label: contents.outOf,
    details: [contents.ofAll(piecesOf(lines), all)],
    tone: 'act',
    refusal: lines.length === 0 ? words.bench.shelf.chooseWhat : undefined,
    onPress: () => {
      send({ type: 'out', loadId: load.id, from: load.phase, lines: piecesOf(lines) === all ? null : lines })
      onClose()
    },
  }
  return (
    <div class="bench-column" style={{ width: `${leftPx}px` }}>
      <LineRows
        {...props}
        widthPx={leftPx}
        rows={room.rows - 1}
        lines={inside}
        chosen={null}
        detail={({ varietyId, pieces }) => contents.ofAll(taken(varietyId), pieces)}
        onChoose={(id) => set(id, taken(id) === insideOf(inside, id) ? 0 : insideOf(inside, id))}
        onLess={(id) => set(id, stepDown(taken(id), range(id)))}
        onMore={(id) => set(id, stepUp(taken(id), range(id)))}
      />
      <GridKey item={item} widthPx={leftPx} heightPx={room.rowPx} sizes={sizes} />
    </div>
  )
}

/** Another shelf, a side back or on without a flip, or all of it back onto boards. */
export function MovePart(props: LoadPartProps) {
  const { load, shop, state, words, sizes, room, send, onClose } = props
  const { contents } = words.bench
  const isHearth = shop.oven.kind === 'hearth'
  const taken = new Set([...state.loads.values()].map((one) => one.shelfId))
  const move = (to: 'boards' | Load['phase'], shelfId: ShelfId) => {
    send({ type: 'moveLoad', loadId: load.id, from: load.phase, to, shelfId })
    onClose()
  }
  const shelves: readonly GridItem[] = shelvesInOrder(state, shop)
    .filter((shelf) => shelf.id !== load.shelfId && !shelf.retired)
    .map((shelf) => ({
      id: shelf.id,
      label: contents.toShelf(shelf.name),
      refusal: !isHearth && taken.has(shelf.id) ? contents.taken : undefined,
      onPress: () => move(load.phase, shelf.id),
    }))
  const isFirst = load.phase === 'first-side'
  const other: GridItem = {
    id: 'side',
    label: isFirst ? contents.onToSecondSide : contents.backToFirstSide,
    onPress: () => move(isFirst ? 'second-side' : 'first-side', load.shelfId),
  }
  const back: GridItem = { id: 'boards', label: contents.backOntoBoards, onPress: () => move('boards', load.shelfId) }
  const columns = Math.max(2, Math.floor(room.widthPx / (2 * room.keyPx)))
  return (
    <KeyGrid
      words={words}
      sizes={sizes}
      room={room}
      columns={columns}
      rows={room.rows}
      widthPx={room.widthPx}
      items={[other, back, ...shelves]}
    />
  )
}

/** Dropped or spoiled while it bakes: which line, and how many. */
export function DroppedPart(props: LoadPartProps) {
  const { load, state, words, sizes, room, send, onClose, shop } = props
  const batches = [...state.batches.values()].filter((batch) => batch.loadId === load.id)
  const [chosenId, setChosenId] = useState(batches[0]?.id ?? null)
  const [wanted, setWanted] = useState(1)
  const chosen = batches.find((batch) => batch.id === chosenId) ?? batches[0]
  const { leftPx, rightPx } = splitRoom(room)
  if (chosen === undefined) return null
  const pieces = Math.min(wanted, chosen.pieces)
  const waste: GridItem = {
    id: 'waste',
    label: words.bench.more.wasted(pieces),
    details: [nameOf(chosen, props)],
    tone: 'act',
    onPress: () => {
      send({ type: 'wasteBatch', batchId: chosen.id, from: 'oven', pieces })
      onClose()
    },
  }
  const items = batches.map((batch) => ({
    id: batch.id,
    label: nameOf(batch, props),
    details: [String(batch.pieces)],
    chosen: batch.id === chosen.id,
    onPress: () => setChosenId(batch.id),
  }))
  return (
    <>
      <KeyGrid words={words} sizes={sizes} room={room} columns={1} rows={room.rows} widthPx={leftPx} items={items} />
      <div class="bench-column">
        <PiecesStepper
          isNarrow={splitRoom(room).isNarrow}
          words={words}
          value={pieces}
          min={1}
          max={chosen.pieces}
          steps={[1, shop.boards.pieces]}
          onChange={setWanted}
        />
        <GridKey item={waste} widthPx={Math.min(rightPx, leftPx)} heightPx={room.rowPx} sizes={sizes} />
      </div>
    </>
  )
}

function nameOf({ varietyId, doughId }: Batch, { words }: LoadPartProps): string {
  return varietyId === null ? words.names.dough(doughId) : words.names.variety(varietyId)
}

function contentsOf({ state, shop, load }: LoadPartProps): readonly Line[] {
  return contentsByLoad(state, shop).get(load.id) ?? []
}

function insideOf(lines: readonly Line[], id: VarietyId): number {
  return lines.find((line) => line.varietyId === id)?.pieces ?? 0
}
