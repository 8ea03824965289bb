import { assorted } from '../../shared-core/stock/assorted.ts'
import { Key } from '../parts/key.tsx'
import type { FootProps } from './foot.tsx'
import { SOLD_TOGETHER } from './foot-view.ts'
import { SellFace } from './hand-keys.tsx'
import { ASSORTED_PIECES } from './idle-view.ts'
import { SmallKey } from './small-key.tsx'

/** A sale of which nobody knows the kinds; beside it other numbers of the assorted sale, and its mix to be changed. */
export function UnnamedKeys({ store, state, words, sizes, board }: FootProps) {
  const { hand: say } = words.counter
  const { nowMs } = board.time
  const finish = () => board.setUnnamed(false)
  const sellAssorted = (pieces: number) => () => {
    store.send({ type: 'sell', lines: assorted(state, nowMs, pieces) })
    finish()
  }
  const isNone = assorted(state, nowMs, ASSORTED_PIECES).length === 0
  const refusal = isNone ? say.noneForSale : undefined
  return (
    <div class="counter-keys counter-hand-keys">
      <div class="counter-sell" role="group" aria-label={say.sell}>
        {[1, ...SOLD_TOGETHER].map((pieces) => (
          <Key
            key={pieces}
            name={say.unnamedSold(pieces)}
            onPress={() => {
              store.send({ type: 'sellUnnamed', pieces })
              finish()
            }}
          >
            <SellFace pieces={pieces} namePx={sizes.namePx} hasRings />
          </Key>
        ))}
      </div>
      <SmallKey label={say.other} onPress={() => board.openSheet({ kind: 'amounts', purpose: 'unnamed' })} />
      <SmallKey label={say.assorted(6)} refusal={refusal} onPress={sellAssorted(6)} />
      <SmallKey label={say.assorted(13)} refusal={refusal} onPress={sellAssorted(13)} />
      <SmallKey
        label={say.changeIt}
        refusal={refusal}
        onPress={() => {
          finish()
          board.setHand(assorted(state, nowMs, ASSORTED_PIECES))
        }}
      />
      <SmallKey label={say.putBack} onPress={finish} />
    </div>
  )
}
