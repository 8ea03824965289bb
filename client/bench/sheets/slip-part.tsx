import { planNow } from '../../parts/advice.ts'
import { KeyGrid } from '../sheet.tsx'
import type { ChangePartProps } from './changeover-sheet.tsx'
import { splitRoom } from './split.ts'

const STEP_MINUTES = 15
const MINUTE_MS = 60_000

/** The changeover a quarter of an hour later or earlier: each key says what would move, and a touch moves it. */
export function SlipPart(props: ChangePartProps) {
  const { change, words, sizes, room, send } = props
  const { change: say } = words.shift
  const { slipMs } = change
  const item = (minutes: number) => {
    const would = change.slipped(minutes * MINUTE_MS)
    const texts = [
      say.slipTo(would.fromMs),
      say.lastLoad(would.lastLoadInByMs),
      say.loads(would.loadsMoreThatFit, would.piecesMoreThatFit),
      say.planned(would.plannedMore),
      slipGain(minutes * MINUTE_MS, props),
    ]
    return {
      id: `slip ${minutes}`,
      label: say.slipBy(minutes),
      details: texts.filter((text) => text !== ''),
      onPress: () => send({ type: 'slipChangeover', slipMs: slipMs + minutes * MINUTE_MS }),
    }
  }
  const back = {
    id: 'slip back',
    label: say.usual,
    onPress: () => send({ type: 'slipChangeover', slipMs: 0 }),
  }
  const items = [item(-STEP_MINUTES), item(STEP_MINUTES), ...(slipMs === 0 ? [] : [back])]
  return (
    <div class="bench-notes">
      <div>
        <strong>{say.slipTo(change.fromMs)}</strong>, {say.slipped(Math.round(slipMs / MINUTE_MS))}
      </div>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={{ ...room, rowPx: Math.max(room.rowPx, Math.round(SLIP_ROW_EM * sizes.minPx)) }}
        columns={splitRoom(room).isNarrow ? 1 : 2}
        rows={3}
        widthPx={room.widthPx}
        items={items}
      />
    </div>
  )
}

/** A row tall enough for all that moves. */
const SLIP_ROW_EM = 9.2

/** What the plan expects of it, by money and pieces; "" where nothing is reckoned for just that. */
function slipGain(byMs: number, { live, state, words }: ChangePartProps): string {
  const slip = planNow(live, state)?.last?.slips.find((one) => one.byMs === byMs)
  return slip === undefined ? '' : words.advice.slip(slip)
}
