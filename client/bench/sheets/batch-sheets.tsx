import { useState } from 'preact/hooks'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { Batch, State } from '../../../shared-core/day/state.ts'
import type { BatchId } from '../../../shared-core/ids.ts'
import { contentsByLoad } from '../../../shared-core/line/contents.ts'
import { isBefore } from '../../../shared-core/line/route.ts'
import type { BatchStage, Shop } from '../../../shared-core/shop/shop.ts'
import { BATCH_STAGES } from '../../../shared-core/shop/stages.ts'
import type { BenchWords } from '../../words/bench.ts'
import type { GridItem, SheetParts } from '../sheet.tsx'
import { KeyGrid, Sheet } from '../sheet.tsx'
import { columnsOf } from './more-sheet.tsx'
import type { OpenSheet } from './open-sheet.ts'
import { PiecesStepper } from './pieces-stepper.tsx'
import { splitRoom } from './split.ts'

export interface OnLineSheetProps extends SheetParts {
  readonly state: State
  readonly shop: Shop
  readonly open: (sheet: OpenSheet) => void
}

/** All that stands on the line, nearest the oven first; a touch opens what can be done with it. */
export function OnLineSheet(props: OnLineSheetProps) {
  const { state, words, sizes, room } = props
  const { more } = words.bench
  return (
    <Sheet {...props} title={more.line} detail={more.lineDetail}>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={columnsOf(props)}
        rows={room.rows}
        widthPx={room.widthPx}
        items={[...loadItems(props), ...batchItems(props, state)]}
        nothing={more.nothingOnLine}
      />
    </Sheet>
  )
}

function loadItems({ state, shop, words, open }: OnLineSheetProps): readonly GridItem[] {
  const contents = contentsByLoad(state, shop)
  return [...state.loads.values()].map(({ id, shelfId, phase, plannedId }) => {
    const lines = contents.get(id) ?? []
    return {
      id,
      label: words.line.shelf(shelfId),
      details: [words.line.phase(phase), ...lines.map((line) => words.line.contents([line]))],
      onPress: () => open({ kind: 'contents', start: { shelfId, loadId: id, plannedId, lines } }),
    }
  })
}

function batchItems({ words, open }: OnLineSheetProps, state: State): readonly GridItem[] {
  return [...state.batches.values()]
    .filter((batch) => batch.stage !== 'oven')
    .sort(
      (one, other) =>
        BATCH_STAGES.indexOf(other.stage) - BATCH_STAGES.indexOf(one.stage) || one.sinceMs - other.sinceMs,
    )
    .map((batch) => ({
      id: batch.id,
      label: words.bench.station.amount(nameOf(batch, words), batch.pieces),
      details: [words.line.stage(batch.stage), words.times.since(batch.sinceMs)],
      onPress: () => open({ kind: 'batch', batchId: batch.id }),
    }))
}

export interface BatchSheetProps extends SheetParts {
  readonly state: State
  readonly shop: Shop
  readonly batchId: BatchId
  readonly send: (act: Act) => void
}

/** Some or all of a batch: on, back, past a stage, or wasted. Less than all of it splits it. */
export function BatchSheet(props: BatchSheetProps) {
  const { state, shop, batchId, words, sizes, room, onClose, send } = props
  const { more } = words.bench
  const [counted, setCounted] = useState<number | null>(null)
  const batch = state.batches.get(batchId)
  const split = splitRoom(room)
  if (batch === undefined || batch.stage === 'oven') {
    return (
      <Sheet {...props} title={more.line}>
        <div class="bench-nothing">{more.batchGone}</div>
      </Sheet>
    )
  }
  const pieces = Math.min(counted ?? batch.pieces, batch.pieces)
  const tray = shop.doughs.get(batch.doughId)?.trayPieces ?? shop.boards.pieces
  const does = (act: Act) => {
    send(act)
    onClose()
  }
  return (
    <Sheet
      {...props}
      title={more.batch(batch.pieces, nameOf(batch, words), batch.stage)}
      detail={words.times.since(batch.sinceMs)}
    >
      <div class="bench-column">
        <div class="bench-quiet">{more.howMany}</div>
        <PiecesStepper
          isNarrow={splitRoom(room).isNarrow}
          words={words}
          value={pieces}
          min={1}
          max={batch.pieces}
          steps={[...new Set([1, batch.stage === 'boards' ? shop.boards.pieces : tray])]}
          onChange={setCounted}
        />
      </div>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={2}
        rows={room.rows}
        widthPx={split.leftPx}
        items={ways(batch, { shop, words, pieces, does })}
      />
    </Sheet>
  )
}

interface Ways {
  readonly shop: Shop
  readonly words: BenchWords
  readonly pieces: number
  readonly does: (act: Act) => void
}

function ways(batch: Batch, { shop, words, pieces, does }: Ways): readonly GridItem[] {
  const { more } = words.bench
  const { id, stage, doughId } = batch
  const route = shop.doughs.get(doughId)?.route ?? []
  const others = route.filter((to): to is Exclude<BatchStage, 'oven'> => to !== 'oven' && to !== stage)
  const on = others.filter((to) => isBefore(stage, to))
  const back = others.filter((to) => isBefore(to, stage)).reverse()
  const way = (to: Exclude<BatchStage, 'oven'>, label: string): GridItem => ({
    id: to,
    label,
    onPress: () => does({ type: 'moveBatch', batchId: id, from: stage, to, pieces }),
  })
  return [
    ...on.map((to) => way(to, more.onTo(to))),
    ...back.map((to) => way(to, more.backTo(to))),
    {
      id: 'waste',
      label: more.wasted(pieces),
      tone: 'strong',
      onPress: () => does({ type: 'wasteBatch', batchId: id, from: stage, pieces }),
    },
  ]
}

function nameOf({ varietyId, doughId }: Batch, { names }: BenchWords): string {
  return varietyId === null ? names.dough(doughId) : names.variety(varietyId)
}
