import { Key } from '../parts/key.tsx'
import { PIECES_PER_RING } from '../parts/rod-stack.ts'
import type { FootProps } from './foot.tsx'
import type { SellKey } from './foot-view.ts'
import { sellKeys } from './foot-view.ts'
import { linesOf } from './hand.ts'
import { sellsHere } from './idle-view.ts'
import { RingPile, Singles } from './ring-pile.tsx'
import { SmallKey, Wide } from './small-key.tsx'

/** The keys for what is in hand: the numbers that sell, where sales are tapped here; then what else can be done with it. */
export function HandKeys(props: FootProps) {
  const { state, words, board } = props
  const { hand: say } = words.counter
  const { setHand, openSheet } = board
  const sells = sellsHere(state)
  const open = (purpose: 'other' | 'keep' | 'count') => () => openSheet({ kind: 'amounts', purpose })
  return (
    <div class={sells ? 'counter-keys counter-hand-keys' : 'counter-keys'}>
      {sells ? (
        <SellKeys {...props} />
      ) : (
        <Wide share={3}>
          <Key label={say.count} tone="act" onPress={open('count')} />
        </Wide>
      )}
      <SmallKey label={say.other} onPress={open('other')} />
      {sells && <SmallKey label={say.count} onPress={open('count')} />}
      <SmallKey label={say.keep} onPress={open('keep')} />
      <LastOrFewer {...props} />
      <SmallKey label={say.putBack} onPress={() => setHand([])} />
    </div>
  )
}

function SellKeys({ store, words, sizes, board }: FootProps) {
  const sell = (key: SellKey) => {
    if (key.lines === null) return
    store.send({ type: 'sell', lines: linesOf(key.lines) })
    board.setHand([])
  }
  return (
    <div class="counter-sell" role="group" aria-label={words.counter.hand.sell}>
      {sellKeys(board.hand, words).map((key, index) => (
        <Key
          // Its place says what it is: the number in hand may be the dozen, too.
          key={`sell ${index}`}
          name={key.spoken}
          refusal={key.refusal === '' ? undefined : key.refusal}
          detail={key.detail === '' ? undefined : key.detail}
          onPress={() => sell(key)}
        >
          <SellFace pieces={key.pieces} namePx={sizes.namePx} hasRings={key.refusal === '' && key.detail === ''} />
        </Key>
      ))}
    </div>
  )
}

export function SellFace({ pieces, namePx, hasRings }: { pieces: number; namePx: number; hasRings: boolean }) {
  return (
    <span class="counter-sell-face">
      <span class="counter-sell-number">{pieces}</span>
      {hasRings && <Pieces pieces={pieces} namePx={namePx} />}
    </span>
  )
}

/** Fewer than a half-dozen as what they are, more as they lie on a rod. */
function Pieces({ pieces, namePx }: { pieces: number; namePx: number }) {
  if (pieces < PIECES_PER_RING) return <Singles pieces={pieces} sizePx={namePx * 0.75} />
  return <RingPile pieces={pieces} widthPx={Math.round(namePx * 1.5)} rings={3} />
}

/** Of one rod: the last one went. Of several there is no last one; there a touch may have been one too many. */
function LastOrFewer({ words, board }: FootProps) {
  const { hand: say } = words.counter
  const { hand, isLettingGo } = board
  const [first] = hand
  if (hand.length === 1 && first !== undefined && !isLettingGo) {
    const { varietyId } = first
    return (
      <SmallKey
        label={say.lastOneGone}
        onPress={() => board.sendCount({ type: 'lastOneGone', varietyId }, [varietyId])}
      />
    )
  }
  return <SmallKey label={say.fewer} chosen={isLettingGo} onPress={() => board.setLettingGo(!isLettingGo)} />
}
