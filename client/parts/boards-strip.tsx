import { Drawing } from './drawing.tsx'

export interface BoardsStripProps {
  /** Wet and free. */
  readonly free: number
  /** Under a load, or carrying pieces to one. */
  readonly out: number
  /** Back, and not wet enough yet. */
  readonly drying: number
  /** Boards in a row; 12 when left out. */
  readonly perRow?: number | undefined
  /** Height of one board in CSS pixels. */
  readonly boardPx: number
  /** For those who listen, e.g. "16 wet, 8 out"; without it the strip is decoration. */
  readonly name?: string | undefined
}

/** Width to height of a drawn board, and the gaps between, in board heights. */
const ASPECT = 1.35
const GAP = 0.32

/** The wet boards, drawn one by one: full when free, half when wetting again, empty when out. */
export function BoardsStrip({ free, out, drying, perRow = 12, boardPx, name }: BoardsStripProps) {
  const boards = [...several('free', free), ...several('drying', drying), ...several('out', out)]
  const stepX = boardPx * (ASPECT + GAP)
  const stepY = boardPx * (1 + GAP)
  const columns = Math.min(perRow, boards.length)
  const width = Math.max(0, columns * stepX - boardPx * GAP)
  const height = Math.max(0, Math.ceil(boards.length / perRow) * stepY - boardPx * GAP)
  return (
    <Drawing class="boards" viewBox={`0 0 ${width} ${height}`} width={`${width}px`} height={`${height}px`} name={name}>
      {boards.map((state, index) => (
        // A board is its place in the strip: nobody can tell them apart.
        <Board
          key={index}
          state={state}
          x={(index % perRow) * stepX}
          y={Math.floor(index / perRow) * stepY}
          px={boardPx}
        />
      ))}
    </Drawing>
  )
}

type BoardState = 'free' | 'drying' | 'out'

function several(state: BoardState, count: number): BoardState[] {
  return Array.from({ length: Math.max(0, count) }, () => state)
}

function Board({ state, x, y, px }: { state: BoardState; x: number; y: number; px: number }) {
  const line = Math.max(1.5, px * 0.11)
  const box = { x: x + line / 2, width: px * ASPECT - line, rx: px * 0.18 }
  return (
    <g class={`board board-${state}`} stroke-width={line}>
      {state === 'drying' && <rect class="board-water" {...box} y={y + px / 2} height={px / 2 - line / 2} />}
      <rect class="board-edge" {...box} y={y + line / 2} height={px - line} />
    </g>
  )
}
