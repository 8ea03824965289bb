import { BoardsStrip } from '../parts/boards-strip.tsx'
import { fitList } from '../parts/fit.ts'
import { Key } from '../parts/key.tsx'
import { Ring } from '../parts/ring.tsx'
import type { BenchWords } from '../words/bench.ts'
import { ActKey, FittedWords } from './act-key.tsx'
import type { BenchSizes } from './glass.ts'
import type { BenchLayout } from './layout.ts'
import type { LinePlan } from './line-plan.ts'
import { isBoardsLegend, LEGEND_EM } from './line-plan.ts'
import type { BoardsView, LineView, StandingView, StationKey } from './line-view.ts'

export interface LineProps {
  readonly line: LineView
  readonly plan: LinePlan
  readonly layout: BenchLayout
  readonly sizes: BenchSizes
  readonly words: BenchWords
  readonly onPress: (key: StationKey) => void
  readonly onDiffers: (key: StationKey) => void
}

/** The line before the oven, as it stands in the room: rack and cooler, kettle, boards. */
export function Line(props: LineProps) {
  const { line, plan, layout, sizes, words } = props
  return (
    <section
      class={plan.isSideBySide ? 'bench-line bench-line-side' : 'bench-line bench-line-below'}
      aria-label={words.bench.station.line}
      style={{ width: `${layout.lineWidthPx}px` }}
    >
      <div class="bench-station bench-rack">
        {plan.isSideBySide && <h2 class="bench-heading">{words.bench.station.rack}</h2>}
        <Rack standing={line.standing} plan={plan} sizes={sizes} words={words} />
        {line.pull !== null && !plan.isPaired && <StationRow {...props} station={line.pull} />}
        {plan.isPaired && (
          <div class="bench-shelf">
            {[line.pull, line.boardKey].map(
              (key) => key !== null && <StationRow key={key.which} {...props} station={key} />,
            )}
          </div>
        )}
      </div>
      <div class="bench-station bench-after">
        <Kettle {...props} />
        <Boards {...props} />
      </div>
    </section>
  )
}

interface RackProps extends Pick<LineProps, 'plan' | 'sizes' | 'words'> {
  readonly standing: readonly StandingView[]
}

/** What stands before the kettle, with its window; by name alone where there is only a row for all of it. */
function Rack({ standing, plan, sizes, words }: RackProps) {
  const { station } = words.bench
  const shown = plan.standingShown
  if (standing.length > 0 && shown === 0) {
    const line = { roomPx: plan.columnPx, fontPx: sizes.minPx, weight: 'strong' } as const
    const titles = standing.map((one) => one.title)
    return (
      <ul class="bench-standing">
        <li>
          <strong>{fitList(titles, line, words.bench.shelf.more)}</strong>
        </li>
      </ul>
    )
  }
  const rest = standing.length - shown
  return (
    <ul class="bench-standing">
      {standing.length === 0 && <li class="bench-quiet">{station.empty}</li>}
      {standing.slice(0, shown).map((one) => (
        <li key={one.id}>
          <strong>{one.title}</strong>
          <span class={one.isOver ? 'bench-trouble' : 'bench-quiet'}>{one.detail}</span>
        </li>
      ))}
      {rest > 0 && <li class="bench-quiet">{station.andMore(rest)}</li>}
    </ul>
  )
}

/** The kettle's ring and what is in it; a key where somebody taps dip or lift. */
function Kettle(props: LineProps) {
  const { line, plan, words } = props
  const station = line.kettleKey
  return (
    <div class="bench-kettle">
      {plan.isSideBySide && <h2 class="bench-heading">{words.bench.station.kettle}</h2>}
      {station === null ? <KettleFace {...props} /> : <KettleKey {...props} station={station} />}
    </div>
  )
}

function KettleKey({ line, plan, sizes, words, station, onPress }: LineProps & { readonly station: StationKey }) {
  const isWide = plan.isSideBySide
  return (
    <div data-station="kettle">
      <ActKey
        view={{ ...station, notes: [] }}
        ring={kettleRing(line)}
        ringAbovePx={isWide ? plan.kettleRingPx : undefined}
        widthPx={plan.kettleKeyPx}
        heightPx={plan.kettleHeightPx}
        sizes={sizes}
        isDense={!isWide}
        name={[station.what, station.when, ...station.contents].filter((text) => text !== '').join(', ')}
        moreText={words.bench.shelf.more}
        allText=""
        onPress={() => onPress(station)}
      />
    </div>
  )
}

function KettleFace({ line, plan, layout, sizes, words }: LineProps) {
  const { kettle } = line
  const isWide = plan.isSideBySide
  const room = {
    widthPx: isWide ? plan.columnPx : plan.columnPx - plan.kettleRingPx - layout.gapPx,
    heightPx: isWide ? plan.kettleHeightPx - plan.kettleRingPx : plan.kettleHeightPx,
    actPx: isWide ? sizes.labelPx : sizes.minPx,
    minPx: sizes.minPx,
  }
  const view = { what: kettle.title, when: '', contents: kettle.details, notes: [] }
  return (
    <div class={isWide ? 'bench-kettle-above' : 'bench-kettle-beside'}>
      <Ring {...kettleRing(line)} size={plan.kettleRingPx} />
      <FittedWords view={view} room={{ ...room, moreText: words.bench.shelf.more, allText: '' }} />
    </div>
  )
}

function Boards(props: LineProps) {
  const { line, plan, words, sizes } = props
  const { boards, boardKey } = line
  return (
    <div class="bench-boards">
      {plan.isSideBySide && (
        <h2 class="bench-heading bench-boards-now">
          <strong class="bench-heading-name">{words.bench.station.boards}</strong>
          {!plan.boards.hasDetail && isBoardsLegend(boards) && <BoardsDetail boards={boards} sizes={sizes} />}
        </h2>
      )}
      <div class="bench-boards-now">
        {plan.boards.hasTitle && <strong>{boards.title}</strong>}
        {plan.boards.hasDetail && <BoardsDetail boards={boards} sizes={sizes} />}
      </div>
      {plan.boards.stripPx !== null && (
        <BoardsStrip {...boards.drawn} perRow={plan.boards.perRow} boardPx={plan.boards.boardPx} />
      )}
      {boardKey !== null && !plan.isPaired && <StationRow {...props} station={boardKey} />}
    </div>
  )
}

/** How many are short, or how many get wet, with what such a board looks like. */
function BoardsDetail({ boards, sizes }: Pick<LineProps, 'sizes'> & { readonly boards: BoardsView }) {
  return (
    <span class={boards.over > 0 ? 'bench-trouble' : 'bench-quiet'}>
      {isBoardsLegend(boards) && <BoardsStrip free={0} out={0} drying={1} boardPx={sizes.minPx * LEGEND_EM.height} />}
      {boards.detail}
    </span>
  )
}

function StationRow(props: LineProps & { readonly station: StationKey }) {
  const { station, layout, sizes, words, plan, onPress, onDiffers } = props
  const { shelf } = words.bench
  return (
    <div class="bench-shelf" data-station={station.which}>
      <ActKey
        view={{ ...station, notes: [] }}
        ring={null}
        widthPx={plan.stationKeyPx}
        heightPx={plan.stationHeightPx}
        sizes={sizes}
        isDense
        name={[station.what, station.when, ...station.contents].filter((text) => text !== '').join(', ')}
        moreText={shelf.more}
        allText=""
        onPress={() => onPress(station)}
      />
      {!plan.isPaired && (
        <div class="bench-differs" style={{ width: `${layout.keyPx}px` }}>
          <Key name={shelf.differsOf(station.what)} onPress={() => onDiffers(station)}>
            <span class="bench-small">{shelf.differs}</span>
          </Key>
        </div>
      )}
    </div>
  )
}

function kettleRing({ kettle }: LineView) {
  return { ...kettle.ring, label: kettle.label === '' ? undefined : kettle.label }
}
