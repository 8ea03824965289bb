import { allergensOfVariety, namesOf } from '../../../../shared-core/dough/allergens.ts'
import { doughId, varietyId } from '../../../../shared-core/ids.ts'
import { inUse } from '../../../../shared-core/shop/in-order.ts'
import { sizeWindows } from '../../../../shared-core/shop/pickable.ts'
import { CENTS_MAX, SHOW_LEAST_MAX, USUAL_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { Shop, Variety } from '../../../../shared-core/shop/shop.ts'
import { ALLERGENS } from '../../../../shared-core/shop/stages.ts'
import { NumberField } from '../fields/number-field.tsx'
import { OptionalField } from '../fields/optional-field.tsx'
import { ManyField, PickField, TickField } from '../fields/pick-field.tsx'
import { VARIETIES } from '../lists.ts'
import { moneySaid } from '../say-value.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { AllergensFromIngredients, CostFromIngredients } from './by-ingredients.tsx'
import { ListPart } from './list-part.tsx'
import { DoughField, ToppingField } from './made-of.tsx'
import { WindowsFields } from './windows-fields.tsx'

/** A dough, a size and shape, and a topping; and what that means on the line. */
export function VarietiesPart(props: SetUpProps) {
  const { draft, words, say } = props
  const line = ({ doughId, size, toppingId, priceCents }: Variety) =>
    [
      words.names.dough(doughId),
      ...(size === 'regular' ? [] : [say.options.size[size]]),
      ...(toppingId === null ? [] : [words.names.topping(toppingId)]),
      ...(priceCents === 0 ? [] : [moneySaid(priceCents)]),
    ].join(' · ')
  return (
    <ListPart kind={VARIETIES} parts={props} like={newVariety(draft)} line={line}>
      {(variety, set) => <VarietyFields parts={props} variety={variety} set={set} />}
    </ListPart>
  )
}

function newVariety(draft: Shop): Variety {
  const [dough] = inUse(draft.doughs)
  return {
    id: varietyId('new'),
    name: '',
    order: 0,
    doughId: dough?.id ?? doughId('none'),
    size: 'regular',
    decidedAt: 'line',
    topping: 'none',
    toppingId: null,
    bakedOn: dough?.route.includes('boards') === true ? 'board' : 'pan',
    flip: true,
    windows: {},
    priceCents: 0,
    costCents: 0,
    kitchenCents: null,
    showLeast: 0,
    avoids: [],
    usual: null,
    retired: false,
  }
}

const SIZES = ['regular', 'mini', 'large', 'stick'] as const

interface VarietyFieldsProps {
  readonly parts: SetUpProps
  readonly variety: Variety
  readonly set: (variety: Variety) => void
}

function VarietyFields({ parts, variety, set }: VarietyFieldsProps) {
  const { draft, say } = parts
  const dough = draft.doughs.get(variety.doughId)
  return (
    <>
      <DoughField parts={parts} variety={variety} set={set} />
      <PickField
        label={say.fields.variety.size}
        options={SIZES.map((value) => ({ value, label: say.options.size[value] }))}
        value={variety.size}
        onChange={(size) => set({ ...variety, size, windows: windowsFor(variety, size) })}
      />
      <ToppingField parts={parts} variety={variety} set={set} />
      <LineFields parts={parts} variety={variety} set={set} />
      <div class="setup-columns">
        {(['priceCents', 'costCents'] as const).map((field) => (
          <NumberField
            key={field}
            label={say.fields.variety[field]}
            value={variety[field] / 100}
            min={0}
            max={CENTS_MAX / 100}
            step={0.25}
            decimals={2}
            say={say}
            onChange={(amount) => set({ ...variety, [field]: Math.round(amount * 100) })}
          />
        ))}
      </div>
      <div class="setup-columns">
        <OptionalField
          label={say.fields.variety.kitchenCents}
          value={variety.kitchenCents}
          begin={variety.priceCents}
          say={say}
          onChange={(kitchenCents) => set({ ...variety, kitchenCents })}
        >
          {(cents) => (
            <NumberField
              label={say.fields.variety.kitchenCents}
              value={cents / 100}
              min={0}
              max={CENTS_MAX / 100}
              step={0.25}
              decimals={2}
              say={say}
              onChange={(amount) => set({ ...variety, kitchenCents: Math.round(amount * 100) })}
            />
          )}
        </OptionalField>
        <OptionalField
          label={say.fields.variety.usual}
          value={variety.usual}
          begin={24}
          say={say}
          onChange={(usual) => set({ ...variety, usual })}
        >
          {(usual) => (
            <NumberField
              label={say.fields.variety.usual}
              value={usual}
              min={0}
              max={USUAL_MAX}
              step={6}
              say={say}
              onChange={(pieces) => set({ ...variety, usual: pieces })}
            />
          )}
        </OptionalField>
      </div>
      <CostFromIngredients parts={parts} id={variety.id} />
      <BakingFields parts={parts} variety={variety} set={set} />
      <AllergensFromIngredients parts={parts} found={allergensOfVariety(draft, variety.id)} />
      <details class="setup-fold">
        <summary>{say.fields.variety.windows}</summary>
        <p class="setup-caution">{say.cautions.timers}</p>
        <WindowsFields
          parts={parts}
          windows={variety.windows}
          otherwise={{ ...draft.windows, ...dough?.windows }}
          onChange={(windows) => set({ ...variety, windows })}
        />
      </details>
    </>
  )
}

/** What the plan of loads heeds of a variety. */
function BakingFields({ parts, variety, set }: VarietyFieldsProps) {
  const { draft, say } = parts
  const own = namesOf(allergensOfVariety(draft, variety.id)).filter((one) => variety.avoids.includes(one))
  return (
    <>
      <NumberField
        label={say.fields.variety.showLeast}
        value={variety.showLeast}
        min={0}
        max={SHOW_LEAST_MAX}
        step={6}
        say={say}
        onChange={(showLeast) => set({ ...variety, showLeast })}
      />
      <p class="setup-hint">{say.baking.showHint}</p>
      <ManyField
        label={say.fields.variety.avoids}
        options={ALLERGENS.map((value) => ({ value, label: say.options.allergen[value] }))}
        values={variety.avoids}
        onChange={(avoids) => set({ ...variety, avoids })}
      />
      <p class="setup-hint">{say.baking.avoidsHint}</p>
      {own.length > 0 && (
        <p class="setup-hint">{say.baking.avoidsItself(own.map((one) => say.options.allergen[one]).join(', '))}</p>
      )}
    </>
  )
}

/** The times that a size brings, unless others were typed. */
function windowsFor(variety: Variety, size: Variety['size']): Variety['windows'] {
  const isUntouched = JSON.stringify(variety.windows) === JSON.stringify(sizeWindows(variety.size))
  return isUntouched ? sizeWindows(size) : variety.windows
}

function LineFields({ parts, variety, set }: VarietyFieldsProps) {
  const { say } = parts
  return (
    <div class="setup-columns">
      <PickField
        label={say.fields.variety.decidedAt}
        options={(['line', 'mixer'] as const).map((value) => ({ value, label: say.options.decidedAt[value] }))}
        value={variety.decidedAt}
        onChange={(decidedAt) => set({ ...variety, decidedAt })}
      />
      <PickField
        label={say.fields.variety.bakedOn}
        options={(['board', 'pan'] as const).map((value) => ({ value, label: say.options.bakedOn[value] }))}
        value={variety.bakedOn}
        // What lies on a board is flipped off it.
        onChange={(bakedOn) => set({ ...variety, bakedOn, flip: variety.flip || bakedOn === 'board' })}
      />
      {variety.bakedOn === 'pan' && (
        <TickField
          label={say.fields.variety.flip}
          value={variety.flip}
          onChange={(flip) =>
            set({
              ...variety,
              flip,
              topping: !flip && variety.topping === 'after-flip' ? 'before-flip' : variety.topping,
            })
          }
        />
      )}
    </div>
  )
}
