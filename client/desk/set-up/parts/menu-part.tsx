import { menuItemId } from '../../../../shared-core/ids.ts'
import { inUse } from '../../../../shared-core/shop/in-order.ts'
import type { MenuItem } from '../../../../shared-core/shop/kitchen.ts'
import { CENTS_MAX, PORTIONS_EACH_MAX, PORTIONS_OF_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import { ALLERGENS } from '../../../../shared-core/shop/stages.ts'
import { AddPick } from '../fields/add-pick.tsx'
import { NumberField } from '../fields/number-field.tsx'
import { TickField } from '../fields/pick-field.tsx'
import { portionName, stepsSaid } from '../kitchen-text.ts'
import { MENU } from '../lists.ts'
import { moneySaid } from '../say-value.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { ItemSteps } from './item-steps.tsx'
import { ListPart } from './list-part.tsx'

const NEW: MenuItem = {
  id: menuItemId('new'),
  name: '',
  order: 0,
  priceCents: 0,
  onBagel: false,
  canToast: false,
  portions: [],
  steps: [],
  retired: false,
}

/** What is made to order: what it costs, what goes into it, and how it is made part by part. */
export function MenuPart(props: SetUpProps) {
  const { say, words, draft } = props
  const line = ({ priceCents, steps }: MenuItem) =>
    [...(priceCents === 0 ? [] : [moneySaid(priceCents)]), stepsSaid(steps, { say, words, shop: draft })].join(' · ')
  return (
    <>
      <p class="setup-caution">{say.cautions.allergens}</p>
      <ListPart kind={MENU} parts={props} like={NEW} line={line}>
        {(item, set) => <ItemFields {...props} item={item} set={set} />}
      </ListPart>
    </>
  )
}

export interface ItemFieldsProps extends SetUpProps {
  readonly item: MenuItem
  readonly set: (item: MenuItem) => void
}

function ItemFields(props: ItemFieldsProps) {
  const { say, item, set } = props
  return (
    <>
      <NumberField
        label={say.fields.menuItem.priceCents}
        value={item.priceCents / 100}
        min={0}
        max={CENTS_MAX / 100}
        step={0.5}
        decimals={2}
        say={say}
        onChange={(amount) => set({ ...item, priceCents: Math.round(amount * 100) })}
      />
      <TickField
        label={say.fields.menuItem.onBagel}
        value={item.onBagel}
        // What is on no bagel is not toasted either.
        onChange={(onBagel) => set({ ...item, onBagel, canToast: onBagel && item.canToast })}
      />
      <p class="setup-hint">{say.kitchen.item.onBagelHint}</p>
      {item.onBagel && (
        <TickField
          label={say.fields.menuItem.canToast}
          value={item.canToast}
          onChange={(canToast) => set({ ...item, canToast })}
        />
      )}
      <PortionsField {...props} />
      <ItemSteps {...props} />
    </>
  )
}

/** Which portions go into one, and how many of each. */
function PortionsField({ draft, say, item, set }: ItemFieldsProps) {
  const { portions } = item
  const words = say.kitchen.item
  const more = inUse(draft.portions).filter(({ id }) => portions.every(({ portionId }) => portionId !== id))
  const contains = ALLERGENS.filter((allergen) =>
    portions.some(({ portionId }) => draft.portions.get(portionId)?.contains.includes(allergen)),
  )
    .map((allergen) => say.options.allergen[allergen])
    .join(', ')
  const put = (next: MenuItem['portions']) => set({ ...item, portions: next })
  return (
    <div role="group" aria-label={say.fields.menuItem.portions}>
      <h3>{say.fields.menuItem.portions}</h3>
      <p class="setup-hint">{draft.portions.size === 0 ? words.noPortions : words.portionsHint}</p>
      <div class="setup-columns">
        {portions.map((part) => {
          const name = portionName(draft, part.portionId)
          return (
            <div key={part.portionId} class="setup-span">
              <NumberField
                label={name}
                value={part.portions}
                min={1}
                max={PORTIONS_EACH_MAX}
                step={1}
                say={say}
                onChange={(count) => put(portions.map((one) => (one === part ? { ...one, portions: count } : one)))}
              />
              <button
                type="button"
                class="setup-beside"
                aria-label={words.remove(name)}
                onClick={() => put(portions.filter((one) => one !== part))}
              >
                ×
              </button>
            </div>
          )
        })}
      </div>
      {portions.length < PORTIONS_OF_MAX && (
        <AddPick
          label={say.fields.menuItem.portions}
          say={say}
          more={more}
          onAdd={({ id }) => put([...portions, { portionId: id, portions: 1 }])}
        />
      )}
      {contains !== '' && (
        <p class="setup-hint">
          {words.contains(contains)} {item.onBagel ? words.onBagelToo : ''}
        </p>
      )}
    </div>
  )
}
