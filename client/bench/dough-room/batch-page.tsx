import type { Batch } from '../../../shared-core/day/state.ts'
import { untilOf } from '../../../shared-core/ferment/until-of.ts'
import type { BatchId } from '../../../shared-core/ids.ts'
import { durationMs } from '../../../shared-core/units.ts'
import { Ring } from '../../parts/ring.tsx'
import { stuffOf } from '../../words/names.ts'
import type { GridItem } from '../sheet.tsx'
import { KeyGrid } from '../sheet.tsx'
import { BatchSheet } from '../sheets/batch-sheets.tsx'
import { splitRoom } from '../sheets/split.ts'
import { PlacePad } from './place-pad.tsx'
import type { RoomPage, RoomSheetProps } from './room-parts.ts'
import { RoomSheet } from './room-sheet.tsx'
import { batchItem } from './tray-view.ts'

export interface BatchPageProps extends RoomSheetProps {
  readonly batchId: BatchId
  readonly part: 'look' | 'place' | 'move'
}

/** How long until the next look, in minutes. Common practice, no source. */
const LOOK_AGAIN_MINUTES = [10, 15, 20, 30] as const
const RING_KEYS = 2.4

/** Pieces on a proof rack or in the cooler: their clock, the float or poke test, where they stand, and the way on. */
export function BatchPage(props: BatchPageProps) {
  const { state, batchId, part, words, open, send, room, sizes } = props
  const batch = state.batches.get(batchId)
  const page: RoomPage = { kind: 'batch', batchId }
  if (batch === undefined || (batch.stage !== 'proof' && batch.stage !== 'chill')) {
    return (
      <RoomSheet {...props} title={words.room.title}>
        <div class="bench-nothing">{words.room.batch.gone}</div>
      </RoomSheet>
    )
  }
  if (part === 'move') return <BatchSheet {...props} onClose={() => open(page)} />
  if (part === 'place') {
    const onPlace = (place: string | null) => void send({ type: 'placeBatch', batchId, place })
    return <PlacePad {...props} now={batch.place ?? null} onPlace={onPlace} onEnd={() => open(page)} />
  }
  const view = batchItem(batch, props)
  const { leftPx, rightPx, isNarrow } = splitRoom(room)
  const items = batchKeys(batch, props)
  return (
    <RoomSheet
      {...props}
      title={view.what}
      detail={`${words.line.stage(batch.stage)} ${words.times.since(batch.sinceMs)}`}
    >
      <div class="bench-column dough-now" style={{ width: `${leftPx}px` }}>
        <Ring {...view.ring} size={Math.round(RING_KEYS * room.keyPx)} />
        {view.contents.map((text) => (
          <span key={text} class="bench-label">
            {text}
          </span>
        ))}
      </div>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={isNarrow ? 1 : 2}
        rows={isNarrow ? items.length : room.rows}
        widthPx={rightPx}
        items={items}
      />
    </RoomSheet>
  )
}

function batchKeys(batch: Batch, props: BatchPageProps): readonly GridItem[] {
  const { words, send, open, shop, nowMs, state } = props
  const { id, doughId, pieces } = batch
  const say = words.room.batch
  const page = { kind: 'batch', batchId: id } as const
  const until = untilOf(state, batch)
  const isReady = until !== null && nowMs >= until.targetAtMs
  const canChill = batch.stage === 'proof' && shop.doughs.get(doughId)?.route.includes('chill') === true
  const chill: GridItem = {
    id: 'chill',
    label: say.chill,
    details: [stuffOf(batch, words.names)],
    tone: isReady ? 'act' : 'strong',
    onPress: () => {
      send({ type: 'moveBatch', batchId: id, from: batch.stage, to: 'chill', pieces })
      open(null)
    },
  }
  const looks = LOOK_AGAIN_MINUTES.map(
    (minutes): GridItem => ({
      id: `look ${minutes}`,
      label: say.notReady,
      details: [words.shift.steps.lookIn(minutes)],
      onPress: () =>
        send({ type: 'testFloat', doughId, passed: false, lookAgainMs: durationMs(minutes * 60_000), personId: null }),
    }),
  )
  return [
    ...(canChill ? [chill] : []),
    {
      id: 'passed',
      label: say.passed,
      onPress: () => send({ type: 'testFloat', doughId, passed: true, lookAgainMs: null, personId: null }),
    },
    ...looks,
    { id: 'place', label: say.place, details: [batch.place ?? ''], onPress: () => open({ ...page, part: 'place' }) },
    { id: 'part', label: say.partOrWaste, onPress: () => open({ ...page, part: 'move' }) },
  ]
}
