import { useState } from 'preact/hooks'
import type { ChangeoverNow, OvenReading } from '../../../shared-core/day/changeover.ts'
import { changeoverNow } from '../../../shared-core/day/changeover.ts'
import { shelfMark } from '../../../shared-core/day/marks.ts'
import type { ShelfId } from '../../../shared-core/ids.ts'
import { contentsByLoad } from '../../../shared-core/line/contents.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import { Key } from '../../parts/key.tsx'
import { capitalised } from '../../words/joined.ts'
import { Sheet } from '../sheet.tsx'
import { ListRows } from './list-rows.tsx'
import { SlipPart } from './slip-part.tsx'
import type { StepsSheetProps } from './steps-sheet.tsx'
import { changeoverHere, detailOf, hasPeople, PersonKey, RowKey, rulerHere, StepRows } from './steps-sheet.tsx'

export type ChangePart = 'list' | 'shelves' | 'heat' | 'slip'

export interface ChangePartProps extends StepsSheetProps {
  readonly change: ChangeoverNow
}

/** The changeover: its list, the oven shelf by shelf, its heat, and what moving it would do. */
export function ChangeoverSheet(props: StepsSheetProps & { readonly part: ChangePart }) {
  const { words, nowMs } = props
  const { steps, change: say } = words.shift
  const [part, setPart] = useState(props.part)
  const change = changeoverNow(props.state, nowMs, rulerHere(props))
  if (change === null) {
    return (
      <Sheet {...props} title={steps.changeover}>
        <div class="bench-nothing">{say.none}</div>
      </Sheet>
    )
  }
  const parts: readonly (readonly [ChangePart, string])[] = [
    ['list', say.list],
    ['shelves', say.shelves],
    ['heat', say.readings],
    ['slip', say.slip],
  ]
  const keys = parts.map(([one, label]) => (
    <div key={one} class="bench-mode">
      <Key chosen={one === part} onPress={() => setPart(one)}>
        <span class="bench-small">{label}</span>
      </Key>
    </div>
  ))
  return (
    <Sheet
      {...props}
      title={say.when(change.fromMs, change.toMs, nowMs)}
      detail={detailHere(props, change)}
      keys={keys}
    >
      <Part {...props} part={part} change={change} />
    </Sheet>
  )
}

function detailHere(props: StepsSheetProps, change: ChangeoverNow): string {
  const { change: say } = props.words.shift
  const list = changeoverHere(props)
  if (list !== null && list.doneCount < list.lines.length) return detailOf(list, 'changeover', props)
  if (!change.isOver) return say.ovenEmpty(change.ovenEmptyAtMs)
  const left = props.words.line.contents(change.left)
  return change.left.length === 0 ? say.nothingLeft : `${say.left}: ${left}`
}

function Part(props: ChangePartProps & { readonly part: ChangePart }) {
  switch (props.part) {
    case 'list':
      return (
        <StepRows
          {...props}
          list={changeoverHere(props)}
          from={{ kind: 'changeover', part: 'list' }}
          foot={hasPeople(props.shop) ? <PersonKey {...props} /> : undefined}
        />
      )
    case 'shelves':
      return <Shelves {...props} />
    case 'heat':
      return <Heat {...props} />
    case 'slip':
      return <SlipPart {...props} />
  }
}

/** One row a shelf: bagels, emptying or over; a touch says that it is over, or that it takes bagels again. */
function Shelves(props: ChangePartProps) {
  const { change, words, send, state, shop } = props
  const contents = contentsByLoad(state, shop)
  const { change: say } = words.shift
  const items = change.shelves.map(({ shelfId, state: turn, freeAtMs }) => {
    const loads = [...state.loads.values()].filter((load) => load.shelfId === shelfId)
    const inside = loads.flatMap(({ id }) => contents.get(id) ?? [])
    const held = inside.length === 0 ? [] : [words.line.pieces(piecesOf(inside))]
    const title = capitalised(words.line.shelf(shelfId))
    return { id: shelfId, title, texts: [say.shelfState(turn, freeAtMs), ...held], turn }
  })
  return (
    <ListRows
      {...props}
      items={items}
      nothing=""
      keysOf={({ id, title, turn }) => {
        const isOver = turn === 'over' || isSaidOver(props, id)
        const label = isOver ? say.bagelsAgain : say.over
        const to = isOver ? 'bagels' : 'secondMenu'
        return (
          <RowKey
            {...props}
            label={label}
            name={`${title}: ${label}`}
            tone={isOver ? 'plain' : 'strong'}
            onPress={() => send({ type: 'changeOverShelf', shelfId: id, to })}
          />
        )
      }}
    />
  )
}

/** Said to be over while its last load is still in. */
function isSaidOver({ state }: ChangePartProps, shelfId: ShelfId): boolean {
  return state.marks.get(shelfMark(shelfId))?.kind === 'shelf-over'
}

function Heat(props: ChangePartProps) {
  const { change, words, open } = props
  const { change: say } = words.shift
  const text = (reading: OvenReading | null) =>
    reading === null ? say.noReading : say.reading(reading.degrees, reading.unit, reading.atMs)
  const places = [
    { id: 'oven', shelfId: null, title: say.wholeOven, texts: [text(change.reading)] },
    ...change.shelves.map(({ shelfId, reading }) => ({
      id: shelfId,
      shelfId,
      title: capitalised(words.line.shelf(shelfId)),
      texts: [text(reading)],
    })),
  ]
  return (
    <ListRows
      {...props}
      items={places}
      nothing=""
      keysOf={({ shelfId, title }) => (
        <RowKey
          {...props}
          label={say.type}
          name={`${say.type}: ${title}`}
          onPress={() => open({ kind: 'heat', shelfId })}
        />
      )}
    />
  )
}
