import { useState } from 'preact/hooks'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { Line, State } from '../../../shared-core/day/state.ts'
import type { LoadId, PlannedId, ShelfId, VarietyId } from '../../../shared-core/ids.ts'
import { offer } from '../../../shared-core/line/differs.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import { plannedAhead } from '../../../shared-core/line/planned.ts'
import type { Plan } from '../../../shared-core/live/plan.ts'
import type { Shelf, Shop } from '../../../shared-core/shop/shop.ts'
import { planLoad } from '../../parts/advice.ts'
import { Key } from '../../parts/key.tsx'
import { sameLines } from '../draft.ts'
import type { SheetParts } from '../sheet.tsx'
import { KeyGrid, Sheet } from '../sheet.tsx'
import { EditLines } from './edit-lines.tsx'
import { DroppedPart, MovePart, SomeOutPart } from './load-parts.tsx'
import { WhyPart } from './why-part.tsx'

/** What "differs" begins with: what the key of the shelf was showing. */
export interface ContentsStart {
  readonly shelfId: ShelfId
  /** Null: it is not in yet. */
  readonly loadId: LoadId | null
  readonly plannedId: PlannedId | null
  readonly lines: readonly Line[]
}

export interface ContentsSheetProps extends SheetParts {
  readonly state: State
  readonly shop: Shop
  /** Null: loads are not advised. */
  readonly plan: Plan | null
  readonly start: ContentsStart
  readonly send: (act: Act) => void
}

type Mode = 'contents' | 'list' | 'why' | 'some-out' | 'move' | 'dropped'

/** What goes onto a shelf, or what is on it: by boards, in a touch or two. */
export function ContentsSheet(props: ContentsSheetProps) {
  const { start, words, shop, plan } = props
  const { contents } = words.bench
  const [mode, setMode] = useState<Mode>('contents')
  const shelf = shop.shelves.get(start.shelfId)
  if (shelf === undefined) return null
  const modes: readonly (readonly [Mode, string])[] =
    start.loadId === null
      ? [
          ['contents', contents.varieties],
          ['list', contents.loadList],
          ...(planLoad(plan, start.plannedId) === null ? [] : [['why', words.advice.reasons] as const]),
        ]
      : [
          ['contents', contents.whatIsIn],
          ['some-out', contents.someOut],
          ['move', contents.move],
          ['dropped', contents.dropped],
        ]
  const keys = modes.map(([one, label]) => (
    <div key={one} class="bench-mode">
      <Key chosen={one === mode} onPress={() => setMode(one)}>
        <span class="bench-small">{label}</span>
      </Key>
    </div>
  ))
  const title = start.loadId === null ? contents.before(shelf.name) : contents.inside(shelf.name)
  return (
    <Sheet {...props} title={title} keys={keys}>
      <ModeBody {...props} shelf={shelf} mode={mode} />
    </Sheet>
  )
}

type BodyProps = ContentsSheetProps & { readonly shelf: Shelf; readonly mode: Mode }

function ModeBody(props: BodyProps) {
  const { start, state, words, mode, plan } = props
  const advised = mode === 'why' ? planLoad(plan, start.plannedId) : null
  if (advised !== null) return <WhyPart {...props} load={advised} />
  if (start.loadId !== null && !state.loads.has(start.loadId)) {
    return <div class="bench-nothing">{words.bench.contents.loadGone}</div>
  }
  const load = start.loadId === null ? undefined : state.loads.get(start.loadId)
  if (load === undefined || mode === 'contents' || mode === 'list' || mode === 'why') return <Edit {...props} />
  if (mode === 'some-out') return <SomeOutPart {...props} load={load} />
  return mode === 'move' ? <MovePart {...props} load={load} /> : <DroppedPart {...props} load={load} />
}

function Edit(props: BodyProps) {
  const { state, shelf, start, words, mode, send, onClose } = props
  const { contents } = words.bench
  const [plannedId, setPlannedId] = useState(start.plannedId)
  const isIn = start.loadId !== null
  return (
    <EditLines
      {...props}
      startLines={start.lines}
      // A hearth's floor is counted in boards: what fits depends on what else lies there, and is never blocked.
      mostPieces={shelf.floorBoards === null ? shelf.pieces : null}
      offered={offered(state, start)}
      takeLabel={isIn ? contents.thatIsIn : words.acts.name({ act: 'load', shelfId: shelf.id })}
      refusalOf={(lines) => (isIn && sameLines(lines, start.lines) ? contents.unchanged : undefined)}
      onTake={(lines) => {
        send(actOf(start, plannedId, lines))
        onClose()
      }}
      instead={
        mode !== 'list'
          ? undefined
          : (replace, widthPx) => (
              <LoadList
                {...props}
                widthPx={widthPx}
                onPick={(id, lines) => {
                  setPlannedId(id)
                  replace(lines)
                }}
              />
            )
      }
    />
  )
}

/** What it holds first, then the likeliest: a key stays where the finger learnt it. */
function offered(state: State, { shelfId, lines }: ContentsStart): readonly VarietyId[] {
  const inside = lines.map((line) => line.varietyId)
  return [...new Set([...inside, ...offer(state, shelfId).map(({ varietyId }) => varietyId)])]
}

function actOf({ loadId, shelfId }: ContentsStart, plannedId: PlannedId | null, lines: readonly Line[]): Act {
  return loadId === null ? { type: 'load', shelfId, plannedId, lines } : { type: 'changeLoad', loadId, lines }
}

interface LoadListProps extends BodyProps {
  readonly widthPx: number
  readonly onPick: (id: PlannedId, lines: readonly Line[]) => void
}

/** The other loads that are to come: one of them may be what is really in hand. */
function LoadList({ state, start, words, sizes, room, widthPx, onPick }: LoadListProps) {
  const { contents } = words.bench
  const items = plannedAhead(state)
    .filter(({ id }) => id !== start.plannedId)
    .map(({ id, lines, inAtMs }) => ({
      id,
      label: inAtMs === null ? words.line.pieces(piecesOf(lines)) : words.times.at(inAtMs),
      details: lines.map((line) => words.line.contents([line])),
      onPress: () => onPick(id, lines),
    }))
  return (
    <KeyGrid
      words={words}
      sizes={sizes}
      room={room}
      columns={2}
      rows={room.rows}
      widthPx={widthPx}
      items={items}
      nothing={contents.nothingPlanned}
    />
  )
}
