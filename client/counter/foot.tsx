import { isNear, lastLoadTexts } from '../parts/afternoon.ts'
import { useMeasuredWidth } from '../parts/measured-width.ts'
import { afternoonWords } from '../words/afternoon.ts'
import type { CounterWords } from '../words/counter.ts'
import type { BoardState } from './counter-board.tsx'
import type { CounterParts } from './counter-screen.tsx'
import type { TextRoom } from './foot-view.ts'
import { firstInRoom, handText, noticeView } from './foot-view.ts'
import { HandKeys } from './hand-keys.tsx'
import { ClosedKeys, IdleKeys } from './idle-keys.tsx'
import { idleText } from './idle-view.ts'
import { FoundKeys, Question } from './told-keys.tsx'
import { UnnamedKeys } from './unnamed-keys.tsx'

export interface FootProps extends CounterParts {
  readonly board: BoardState
}

/**
 * Under the rack: a line of words, and keys. What is in hand comes first, then what was found and what is asked, then
 * what the counter does besides. Its height never changes, so that no rod moves under a finger.
 */
export function Foot(props: FootProps) {
  return (
    <footer class="counter-foot">
      <Strip {...props} />
      <Keys {...props} />
    </footer>
  )
}

function Keys(props: FootProps) {
  const { live, state, words, board } = props
  if (board.hand.length > 0) return <HandKeys {...props} />
  if (board.found !== null) return <FoundKeys {...props} found={board.found} />
  const notice = noticeView(live.notices, words)
  if (notice !== null) return <Question {...props} notice={notice} />
  if (board.isUnnamed) return <UnnamedKeys {...props} />
  return state.day === null && state.lastDay?.before != null ? <ClosedKeys {...props} /> : <IdleKeys {...props} />
}

function toldOf({ isBakingOver, noteText, afternoon, orders, time }: BoardState, words: CounterWords, room: TextRoom) {
  const texts = isNear(afternoon, time.nowMs) ? lastLoadTexts(afternoon, afternoonWords(words)) : []
  return { isBakingOver, order: firstInRoom(orders.lines, room), note: noteText, lastLoad: firstInRoom(texts, room) }
}

/** What is in hand or to be done, and at the right what a person must know of the link. */
function Strip({ live, state, words, sizes, board }: FootProps) {
  const [ref, widthPx] = useMeasuredWidth<HTMLDivElement>()
  const link = words.live.connection(live.connection)
  const waiting = live.connection.phase === 'live' ? '' : words.live.pending(live.pending.length)
  const status = [link, waiting].filter((part) => part !== '').join(' · ')
  const { hand, rods, time } = board
  const { isPhone, quietPx } = sizes
  const room = { widthPx, lines: isPhone ? 2 : 1, fontPx: quietPx }
  const told =
    hand.length > 0
      ? handText(hand, { rods, time, words }, { roomPx: widthPx, fontPx: quietPx })
      : board.isUnnamed
        ? words.counter.hand.unnamedHow
        : idleText(state, words, { ...toldOf(board, words, room), isPhone })
  return (
    <div
      class={status === '' && words.live.demo(live.demo) === '' ? 'counter-strip counter-strip-alone' : 'counter-strip'}
    >
      <div class="counter-hand" ref={ref}>
        {told}
      </div>
      <div class={status === '' ? 'counter-status' : 'counter-status counter-trouble'} role="status">
        {status === '' ? words.live.demo(live.demo) : status}
      </div>
    </div>
  )
}
