import type { ComponentChildren } from 'preact'
import { Key } from '../parts/key.tsx'
import { useMeasuredWidth } from '../parts/measured-width.ts'
import { PIECES_PER_RING } from '../parts/rod-stack.ts'
import { settingsWords } from '../words/settings.ts'
import type { BoardState } from './counter-board.tsx'
import type { CounterParts } from './counter-screen.tsx'
import type { SellKey } from './foot-view.ts'
import { handText, lastDoneHere, noticeView, sellKeys } from './foot-view.ts'
import { linesOf } from './hand.ts'
import { RingPile, Singles } from './ring-pile.tsx'

export interface FootProps extends CounterParts {
  readonly board: BoardState
}

/** Under the rack: a line of words, and the keys for what is in hand; else questions; else what the counter does besides. */
export function Foot(props: FootProps) {
  const { live, words, board } = props
  const notice = board.hand.length > 0 ? null : noticeView(live.notices, words)
  return (
    <footer class="counter-foot">
      <Strip {...props} />
      {board.hand.length > 0 ? (
        <HandKeys {...props} />
      ) : notice !== null ? (
        <Question {...props} />
      ) : (
        <IdleKeys {...props} />
      )}
    </footer>
  )
}

/** What is in hand or to be done, and at the right what a person must know of the link. */
function Strip({ live, words, sizes, board }: FootProps) {
  const [ref, widthPx] = useMeasuredWidth<HTMLDivElement>()
  const link = words.live.connection(live.connection)
  const waiting = live.connection.phase === 'live' ? '' : words.live.pending(live.pending.length)
  const status = [link, waiting].filter((part) => part !== '').join(' · ')
  return (
    <div class="counter-strip">
      <div class="counter-hand" ref={ref}>
        {handText(
          board.hand,
          { rods: board.rods, time: board.time, words },
          { roomPx: widthPx, fontPx: sizes.quietPx },
        )}
      </div>
      <div class={status === '' ? 'counter-status' : 'counter-status counter-trouble'} role="status">
        {status === '' ? words.live.demo(live.demo) : status}
      </div>
    </div>
  )
}

function HandKeys({ store, words, sizes, board }: FootProps) {
  const { hand: say } = words.counter
  const { hand, setHand, openSheet } = board
  const sell = (key: SellKey) => {
    if (key.lines === null) return
    store.send({ type: 'sell', lines: linesOf(key.lines) })
    setHand([])
  }
  return (
    <div class="counter-keys">
      <div class="counter-sell" role="group" aria-label={say.sell}>
        {sellKeys(hand, words).map((key, index) => (
          <Key
            // Its place says what it is: the number in hand may be the dozen, too.
            key={`sell ${index}`}
            name={key.spoken}
            refusal={key.refusal === '' ? undefined : key.refusal}
            detail={key.detail === '' ? undefined : key.detail}
            onPress={() => sell(key)}
          >
            <span class="counter-sell-face">
              <span class="counter-sell-number">{key.pieces}</span>
              {key.refusal === '' && key.detail === '' && <Pieces pieces={key.pieces} namePx={sizes.namePx} />}
            </span>
          </Key>
        ))}
      </div>
      <SmallKey label={say.number} onPress={() => openSheet({ kind: 'amounts', purpose: 'sell' })} />
      <SmallKey label={say.count} onPress={() => openSheet({ kind: 'amounts', purpose: 'count' })} />
      <SmallKey label={say.keep} onPress={() => openSheet({ kind: 'amounts', purpose: 'keep' })} />
      <SmallKey label={say.notSold} onPress={() => openSheet({ kind: 'amounts', purpose: 'not-sold' })} />
      <SmallKey label={say.putBack} onPress={() => setHand([])} />
    </div>
  )
}

/** Fewer than a half-dozen as what they are, more as they lie on a rod. */
function Pieces({ pieces, namePx }: { pieces: number; namePx: number }) {
  if (pieces < PIECES_PER_RING) return <Singles pieces={pieces} sizePx={namePx * 0.75} />
  return <RingPile pieces={pieces} widthPx={Math.round(namePx * 1.5)} rings={3} />
}

function SmallKey({ label, onPress }: { label: string; onPress: () => void }) {
  return (
    <div class="counter-small-key">
      <Key onPress={onPress}>
        <span class="counter-word">{label}</span>
      </Key>
    </div>
  )
}

function IdleKeys({ store, live, state, words, board }: FootProps) {
  const keeps = [...state.keeps.values()]
  const pieces = keeps.flatMap((keep) => keep.lines).reduce((sum, line) => sum + line.pieces, 0)
  const done = lastDoneHere(state, store.deviceId, words)
  const { counter } = words
  return (
    <div class="counter-keys">
      <Wide share={3}>
        <Key
          label={counter.kept.title}
          detail={counter.kept.summary(keeps.length, pieces)}
          onPress={() => board.openSheet({ kind: 'kept' })}
        />
      </Wide>
      <Wide share={5}>
        <Key
          label={counter.takeBack}
          detail={done?.text}
          tone="strong"
          refusal={done === null ? counter.nothingDone : done.refusal === '' ? undefined : done.refusal}
          onPress={() => {
            if (done !== null) store.send({ type: 'takeBack', commandId: done.commandId })
          }}
        />
      </Wide>
      <Wide share={2}>
        <Key
          label={settingsWords(words).title}
          detail={live.settings.name === '' ? undefined : live.settings.name}
          onPress={() => board.openSheet({ kind: 'device' })}
        />
      </Wide>
    </div>
  )
}

function Question({ store, live, words }: FootProps) {
  const notice = noticeView(live.notices, words)
  if (notice === null) return null
  return (
    <div class="counter-keys counter-question" role="alert">
      <div class="counter-question-text">
        <strong>{notice.title}</strong>
        {notice.text !== '' && <span>{notice.text}</span>}
      </div>
      {notice.answer === null ? (
        <Key label={words.counter.putAway} onPress={() => store.dismiss(notice.id)} />
      ) : (
        <>
          <Key label={notice.answer.yes} tone="act" onPress={() => store.confirm(notice.id)} />
          <Key label={notice.answer.no} tone="strong" onPress={() => store.dismiss(notice.id)} />
        </>
      )}
    </div>
  )
}

function Wide({ share, children }: { share: number; children: ComponentChildren }) {
  return (
    <div class="counter-wide" style={{ flexGrow: share }}>
      {children}
    </div>
  )
}
