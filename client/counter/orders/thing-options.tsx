import { useState } from 'preact/hooks'
import { bagelsFree } from '../../../shared-core/kitchen/still-made.ts'
import type { AskedItem } from '../../../shared-core/orders/order-commands.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import type { Allergen } from '../../../shared-core/shop/shop.ts'
import { Key } from '../../parts/key.tsx'
import { FAST_TAP_MS } from '../../parts/press-guard.ts'
import type { CounterOrderWords } from '../../words/counter-orders.ts'
import { capitalised } from '../../words/joined.ts'
import { PageKeys } from '../page-keys.tsx'
import { rowsPage } from '../rows-page.ts'
import { withAllergy, withAnother, withBagel, withChosen, withOneLess, withPortionTurned, withToasted } from './slip.ts'
import type { ThingsProps } from './things.tsx'
import { CELLS } from './things.tsx'

/** What the area over the option keys shows. */
export type ThingMode = 'things' | 'bagel' | 'fillings' | 'allergy'

type AreaProps = ThingsProps & { readonly mode: Exclude<ThingMode, 'things'>; readonly onDone: () => void }

interface Option {
  readonly id: string
  readonly label: string
  readonly detail?: string | undefined
  readonly isChosen: boolean
  readonly press: () => void
}

/** One of the thing's options in place of the things: its bagel, its fillings, what the guest must not get. */
export function OptionArea(props: AreaProps) {
  const { words, sizes } = props
  const [wanted, setPage] = useState(0)
  const all = optionsOf(props)
  const cells = sizes.isPhone ? CELLS.phone : CELLS.tablet
  const { items, page, pages } = rowsPage(all, all.length > cells ? cells - 2 : cells, wanted)
  return (
    <div class="counter-things" data-mode={props.mode}>
      {items.map(({ id, label, detail, isChosen, press }) => (
        <Key key={id} label={label} detail={detail} chosen={isChosen} onPress={press} />
      ))}
      {pages > 1 && <PageKeys page={page} pages={pages} words={words} onPage={setPage} direction="across" />}
    </div>
  )
}

const ALLERGENS: readonly Allergen[] = [
  'milk',
  'egg',
  'wheat',
  'soy',
  'sesame',
  'peanuts',
  'treeNuts',
  'fish',
  'shellfish',
]

function optionsOf({ state, say, board, shop, slip, setSlip, mode, onDone }: AreaProps): readonly Option[] {
  const item = slip.items[slip.chosen]
  if (item === undefined) return []
  if (mode === 'bagel') {
    const free = bagelsFree(state, board.time.nowMs)
    return inUse(shop.varieties).map(({ id, name }) => ({
      id,
      label: name,
      detail: String(free.get(id) ?? 0),
      isChosen: item.varietyId === id,
      press: () => {
        setSlip(withBagel(slip, id))
        onDone()
      },
    }))
  }
  if (mode === 'allergy') {
    return ALLERGENS.map((allergen) => ({
      id: allergen,
      label: capitalised(say.said.allergen[allergen]),
      isChosen: item.allergies.includes(allergen),
      press: () => setSlip(withAllergy(slip, allergen)),
    }))
  }
  // What it is made of first: it is left out more often than something else is added.
  const own = new Set((shop.menu.get(item.itemId)?.portions ?? []).map(({ portionId }) => portionId))
  const portions = inUse(shop.portions)
  return [...portions.filter(({ id }) => own.has(id)), ...portions.filter(({ id }) => !own.has(id))].map(
    ({ id, name }) => {
      const [isOut, isMore] = [item.without.includes(id), item.more.includes(id)]
      return {
        id,
        label: name,
        detail: isOut ? say.slip.leftOut : isMore ? say.slip.moreOf : undefined,
        isChosen: isOut || isMore,
        press: () => setSlip(withPortionTurned(slip, id, own.has(id))),
      }
    },
  )
}

type KeysProps = ThingsProps & { readonly mode: ThingMode; readonly setMode: (mode: ThingMode) => void }

/** What can be said of the chosen thing. */
export function OptionKeys({ say, shop, slip, setSlip, mode, setMode }: KeysProps) {
  const { slip: words } = say
  const item = slip.items[slip.chosen]
  const thing = item === undefined ? undefined : shop.menu.get(item.itemId)
  const turn = (to: ThingMode) => setMode(mode === to ? 'things' : to)
  const change = (to: typeof slip) => {
    setSlip(to)
    setMode('things')
  }
  return (
    <div class="counter-things-under">
      <SaidThing say={say} item={item} />
      <div class="counter-how">
        {thing?.onBagel === true && <Key label={words.bagel} chosen={mode === 'bagel'} onPress={() => turn('bagel')} />}
        {thing?.canToast === true && (
          <Key label={words.toasted} chosen={item?.toasted === true} onPress={() => setSlip(withToasted(slip))} />
        )}
        <Key label={words.fillings} chosen={mode === 'fillings'} onPress={() => turn('fillings')} />
        <Key label={words.allergy} chosen={mode === 'allergy'} onPress={() => turn('allergy')} />
        {slip.items.length > 1 && (
          <Key label={words.nextLine} onPress={() => change(withChosen(slip, (slip.chosen + 1) % slip.items.length))} />
        )}
        <Key label={words.another} onPress={() => change(withAnother(slip))} />
        <Key label={words.less} sameTouchMs={FAST_TAP_MS} onPress={() => change(withOneLess(slip))} />
      </div>
    </div>
  )
}

/** The chosen thing in words. What the guest must not get stands first, in a block of its own. */
function SaidThing({ say, item }: { readonly say: CounterOrderWords; readonly item: AskedItem | undefined }) {
  if (item === undefined) return null
  return (
    <div class="counter-said">
      {item.allergies.length > 0 && <span class="counter-allergy">{say.said.allergy(item.allergies)}</span>}{' '}
      {say.said.item({ ...item, allergies: [] }, item.times)}
    </div>
  )
}
