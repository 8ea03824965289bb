import { useState } from 'preact/hooks'
import type { RoomAct } from '../../../shared-core/dough/room-acts.ts'
import type { KeyTone } from '../../parts/key.tsx'
import { Key } from '../../parts/key.tsx'
import { roomWhen } from '../room-when.ts'
import type { Sounding } from '../sounding.ts'
import { actText } from './act-text.ts'
import { roomLayout } from './room-layout.ts'
import type { RoomItem, RoomSheetProps } from './room-parts.ts'
import { stationViews } from './room-view.ts'
import { StationColumn } from './station-column.tsx'

export interface RoomBoardProps extends RoomSheetProps {
  /** What was just done here, or an answer to a tap; "" when nothing was. */
  readonly told: string
  readonly isTrouble: boolean
  /** What sounds now; null: nothing does. */
  readonly sounding: Sounding | null
  readonly onComing: (key: string) => void
  /** Soonest first. */
  readonly acts: readonly RoomAct[]
}

/** Of a heading: one row of words with the sign beside it. */
const HEADING_EM = 2
/** The next acts that stand in the bar. */
const ACTS_SHOWN = 2

/** The dough room itself: the next acts, the stations from scale to cooler, and what hands need besides. */
export function RoomBoard(props: RoomBoardProps) {
  const { words, room, sizes, calling, open, send, onClose, shop, nowMs } = props
  const [isDiffering, setDiffering] = useState(false)
  const layout = roomLayout(room, Math.ceil(HEADING_EM * sizes.minPx))
  const press = (item: RoomItem) => {
    if (item.acts.length === 0 || isDiffering) open(item.page)
    else for (const act of item.acts) send(act)
    setDiffering(false)
  }
  return (
    <section
      class={layout.isNarrow ? 'bench-sheet bench-sheet-narrow dough-room' : 'bench-sheet dough-room'}
      style={{ '--margin': `${room.marginPx}px`, '--gap': `${room.gapPx}px`, '--key': `${room.keyPx}px` }}
      role="dialog"
      aria-modal="true"
      aria-label={words.room.title}
      data-differing={isDiffering}
    >
      <header class="bench-sheet-head">
        <div class="bench-sheet-title">
          <div class="bench-quiet">
            {words.room.title}, {words.times.clock(nowMs)}
          </div>
          <NextActs {...props} />
          {calling !== null && (
            <div class="bench-calling" data-block="act" role="status">
              {calling}
            </div>
          )}
        </div>
        <div class="bench-sheet-back">
          <Key tone="strong" onPress={onClose}>
            <span class="bench-small bench-strong">{words.bench.sheet.back}</span>
          </Key>
        </div>
      </header>
      {shop.formulas.size === 0 ? (
        <div class="dough-way bench-nothing">{words.room.way.noRoom}</div>
      ) : (
        <div class="dough-way" role="group" aria-label={words.room.way.line}>
          {stationViews(props).map((view) => (
            <StationColumn
              key={view.id}
              view={view}
              layout={layout}
              sizes={sizes}
              words={words}
              onPress={press}
              onMore={() => open({ kind: 'station', station: view.id })}
            />
          ))}
        </div>
      )}
      <RoomFoot {...props} isDiffering={isDiffering} onDiffering={() => setDiffering(!isDiffering)} />
    </section>
  )
}

function NextActs(props: RoomBoardProps) {
  const { acts, words, nowMs } = props
  if (acts.length === 0) return <h1 class="bench-label">{words.room.way.nothingDue}</h1>
  return (
    <h1 class="dough-next">
      {acts.slice(0, ACTS_SHOWN).map((act) => (
        <span
          key={act.key}
          class={act.status === 'coming' ? 'dough-next-act' : 'dough-next-act dough-next-due'}
          data-block={act.status === 'coming' ? undefined : act.status === 'due' ? 'act' : 'late'}
        >
          <strong>{actText(act, props)}</strong> {roomWhen(act, nowMs, words.times)}
        </span>
      ))}
    </h1>
  )
}

interface FootProps extends RoomBoardProps {
  readonly isDiffering: boolean
  readonly onDiffering: () => void
}

/** Taking back what was done here last, preparations, readings, and the key that opens a thing instead of moving it on. */
function RoomFoot(props: FootProps) {
  const { words, lastDone, takeBack, told, isTrouble, open, acts, isDiffering, onDiffering, nowMs, sounding } = props
  const { done, shelf } = words.bench
  const canTakeBack = lastDone !== null && lastDone.refusal === null
  const make = acts.find(({ kind }) => kind === 'prepare' || kind === 'feed')
  const makeTone: KeyTone =
    make === undefined || make.status === 'coming' ? 'plain' : make.status === 'due' ? 'act' : 'late'
  return (
    <footer class="dough-foot">
      <div class="bench-bottom-key">
        <Key
          tone={canTakeBack ? 'strong' : 'plain'}
          refusal={canTakeBack ? undefined : lastDone === null ? done.nothingYet : done.notThis}
          name={lastDone === null ? undefined : `${words.told.takeBack}: ${lastDone.text}`}
          onPress={() => lastDone !== null && takeBack(lastDone)}
        >
          <span class="bench-label">{words.told.takeBack}</span>
        </Key>
      </div>
      <div class={isTrouble && !isDiffering ? 'bench-told bench-trouble' : 'bench-told'} role="status">
        {isDiffering ? shelf.touchWhatDiffers : told}
      </div>
      {sounding !== null && (
        <div class="bench-bottom-key" data-cell="coming">
          <Key onPress={() => props.onComing(sounding.key)}>
            <span class="bench-label">{words.bench.top.coming}</span>
          </Key>
        </div>
      )}
      <div class="bench-bottom-key" data-cell="differs">
        <Key chosen={isDiffering} onPress={onDiffering}>
          <span class="bench-label">{shelf.differs}</span>
        </Key>
      </div>
      <div class="bench-bottom-key" data-cell="preparations">
        <Key tone={makeTone} onPress={() => open({ kind: 'preparations' })}>
          <span class="bench-label">{words.room.made.title}</span>
          {make !== undefined && <span class="bench-small">{words.times.when(make, nowMs)}</span>}
        </Key>
      </div>
      <div class="bench-bottom-key" data-cell="readings">
        <Key onPress={() => open({ kind: 'readings' })}>
          <span class="bench-label">{words.room.readings.title}</span>
        </Key>
      </div>
    </footer>
  )
}
