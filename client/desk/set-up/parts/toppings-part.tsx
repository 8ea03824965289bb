import { allergensOfTopping } from '../../../../shared-core/dough/allergens.ts'
import { toppingId } from '../../../../shared-core/ids.ts'
import type { Topping } from '../../../../shared-core/shop/shop.ts'
import { ALLERGENS } from '../../../../shared-core/shop/stages.ts'
import { ManyField } from '../fields/pick-field.tsx'
import { TOPPINGS } from '../lists.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { AllergensFromIngredients } from './by-ingredients.tsx'
import { ListPart } from './list-part.tsx'
import { MadeOfField } from './made-of-field.tsx'

const NEW: Topping = { id: toppingId('new'), name: '', order: 0, contains: [], madeOf: [], retired: false }

export function ToppingsPart(props: SetUpProps) {
  const { say } = props
  return (
    <>
      <p class="setup-caution">{say.cautions.allergens}</p>
      <ListPart
        kind={TOPPINGS}
        parts={props}
        like={NEW}
        line={({ contains }) => contains.map((allergen) => say.options.allergen[allergen]).join(', ')}
      >
        {(topping, set) => (
          <>
            <ManyField
              label={say.fields.topping.contains}
              options={ALLERGENS.map((value) => ({ value, label: say.options.allergen[value] }))}
              values={topping.contains}
              onChange={(contains) => set({ ...topping, contains })}
            />
            <MadeOfField parts={props} madeOf={topping.madeOf} onChange={(madeOf) => set({ ...topping, madeOf })} />
            <AllergensFromIngredients parts={props} found={allergensOfTopping(props.draft, topping.id)} />
          </>
        )}
      </ListPart>
    </>
  )
}
