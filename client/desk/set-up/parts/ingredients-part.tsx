import { ingredientId } from '../../../../shared-core/ids.ts'
import type { Ingredient } from '../../../../shared-core/shop/formula.ts'
import { inUse } from '../../../../shared-core/shop/in-order.ts'
import { pickableIngredients } from '../../../../shared-core/shop/pickable-ingredients.ts'
import { PRICE_CENTS_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { Profile, Weight } from '../../../../shared-core/shop/shop.ts'
import { ALLERGENS, INGREDIENT_KINDS } from '../../../../shared-core/shop/stages.ts'
import { NumberField } from '../fields/number-field.tsx'
import { OptionalField } from '../fields/optional-field.tsx'
import { ManyField, PickField } from '../fields/pick-field.tsx'
import { WeightField } from '../fields/weight-field.tsx'
import { INGREDIENTS } from '../lists.ts'
import { moneySaid, weightSaid } from '../say-value.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { ListPart } from './list-part.tsx'

/** What is bought: its kind, what its label says, what it costs and how it comes. */
export function IngredientsPart(props: SetUpProps) {
  const { draft, say } = props
  const line = ({ kind, contains, price, bag }: Ingredient) =>
    [
      say.dough.kind[kind],
      ...(contains.length === 0 ? [] : [contains.map((one) => say.options.allergen[one]).join(', ')]),
      ...(price === null ? [] : [say.dough.price(moneySaid(price.cents), weightSaid(price.per))]),
      ...(bag === null ? [] : [weightSaid(bag)]),
    ].join(' · ')
  return (
    <>
      <p class="setup-caution">{say.cautions.allergens}</p>
      {inUse(draft.ingredients).length === 0 && <UsualIngredients {...props} />}
      <ListPart kind={INGREDIENTS} parts={props} like={newIngredient(draft.ingredients.size === 0)} line={line}>
        {(ingredient, set) => <IngredientFields parts={props} ingredient={ingredient} set={set} />}
      </ListPart>
    </>
  )
}

/** Nobody begins with salt. */
function newIngredient(isFirst: boolean): Ingredient {
  return {
    id: ingredientId('new'),
    name: '',
    order: 0,
    kind: isFirst ? 'flour' : 'other',
    contains: [],
    price: null,
    bag: null,
    retired: false,
  }
}

function UsualIngredients({ draft, say, change }: SetUpProps) {
  const usual = pickableIngredients(draft.profile.language)
  return (
    <p>
      <button
        type="button"
        class="desk-button"
        onClick={() => change(usual.map((value) => ({ entity: 'ingredient', value })))}
      >
        {say.form.pickOne}: {usual.map(({ name }) => name).join(', ')}
      </button>
    </p>
  )
}

interface IngredientFieldsProps {
  readonly parts: SetUpProps
  readonly ingredient: Ingredient
  readonly set: (ingredient: Ingredient) => void
}

function IngredientFields({ parts, ingredient, set }: IngredientFieldsProps) {
  const { draft, say } = parts
  const { price, bag } = ingredient
  const sack = bagOf(draft.profile)
  return (
    <>
      <PickField
        label={say.fields.ingredient.kind}
        options={INGREDIENT_KINDS.map((value) => ({ value, label: say.dough.kind[value] }))}
        value={ingredient.kind}
        onChange={(kind) => set({ ...ingredient, kind })}
      />
      <ManyField
        label={say.fields.ingredient.contains}
        options={ALLERGENS.map((value) => ({ value, label: say.options.allergen[value] }))}
        values={ingredient.contains}
        onChange={(contains) => set({ ...ingredient, contains })}
      />
      <div class="setup-columns">
        <OptionalField
          label={say.fields.ingredient.bag}
          value={bag}
          begin={sack}
          say={say}
          onChange={(value) => set({ ...ingredient, bag: value })}
        >
          {(value) => (
            <WeightField
              label={say.fields.ingredient.bag}
              value={value}
              say={say}
              onChange={(next) => set({ ...ingredient, bag: next })}
            />
          )}
        </OptionalField>
        <OptionalField
          label={say.fields.ingredient.price}
          value={price}
          begin={{ cents: 0, per: bag ?? sack }}
          say={say}
          onChange={(value) => set({ ...ingredient, price: value })}
        >
          {(value) => (
            <div class="setup-columns">
              <NumberField
                label={say.fields.ingredient.price}
                value={value.cents / 100}
                min={0}
                max={PRICE_CENTS_MAX / 100}
                decimals={2}
                say={say}
                onChange={(amount) => set({ ...ingredient, price: { ...value, cents: Math.round(amount * 100) } })}
              />
              <WeightField
                label={say.dough.per}
                value={value.per}
                say={say}
                onChange={(per) => set({ ...ingredient, price: { ...value, per } })}
              />
            </div>
          )}
        </OptionalField>
      </div>
    </>
  )
}

/** The usual sack of flour. Common practice, no source. */
function bagOf({ weight }: Profile): Weight {
  return weight === 'g' ? { thousandths: 25_000, unit: 'kg' } : { thousandths: 50_000, unit: 'lb' }
}
