import { totalPercent } from '../../../../shared-core/dough/percents.ts'
import { preparationId } from '../../../../shared-core/ids.ts'
import { dwell } from '../../../../shared-core/shop/default-windows.ts'
import type { Preparation, Share } from '../../../../shared-core/shop/formula.ts'
import { inUse } from '../../../../shared-core/shop/in-order.ts'
import { PERCENT_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { Shop } from '../../../../shared-core/shop/shop.ts'
import { DwellFields } from '../fields/dwell-fields.tsx'
import { NumberField } from '../fields/number-field.tsx'
import { OptionalField } from '../fields/optional-field.tsx'
import { PickField } from '../fields/pick-field.tsx'
import { WeightField } from '../fields/weight-field.tsx'
import { addable, lineToAdd } from '../formula/formula-edit.ts'
import { PercentTable, SumText } from '../formula/percent-table.tsx'
import { PREPARATIONS } from '../lists.ts'
import { dwellSaid, percentSaid } from '../say-value.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { ListPart } from './list-part.tsx'

/** What is made ahead of the mix: pre-ferments and soakers. */
export function PreparationsPart(props: SetUpProps) {
  const { draft, words, say } = props
  const line = ({ kind, ready }: Preparation) =>
    `${say.dough.preparation[kind].name} · ${dwellSaid(ready, { words, say, shop: draft })}`
  return (
    <ListPart kind={PREPARATIONS} parts={props} like={newPreparation(draft)} line={line}>
      {(preparation, set) => <PreparationFields parts={props} preparation={preparation} set={set} />}
    </ListPart>
  )
}

/** Equal flour and water that ripen overnight. Common practice, no source. */
function newPreparation(draft: Shop): Preparation {
  const first = (kind: 'flour' | 'water') => inUse(draft.ingredients).find((one) => one.kind === kind)
  return {
    id: preparationId('new'),
    name: '',
    order: 0,
    kind: 'preferment',
    lines: (['flour', 'water'] as const).flatMap((kind): Share[] => {
      const ingredient = first(kind)
      return ingredient === undefined ? [] : [{ ingredientId: ingredient.id, percent: 100_000 }]
    }),
    seedPercent: 0,
    fedWith: null,
    ready: dwell('h', 8, 12, 16),
    retired: false,
  }
}

interface PreparationFieldsProps {
  readonly parts: SetUpProps
  readonly preparation: Preparation
  readonly set: (preparation: Preparation) => void
}

function PreparationFields({ parts, preparation, set }: PreparationFieldsProps) {
  const { draft, words, say } = parts
  const { kind, lines, ready } = preparation
  return (
    <>
      <PickField
        label={say.fields.preparation.kind}
        isTall
        options={(['preferment', 'soaker'] as const).map((value) => ({
          value,
          label: say.dough.preparation[value].name,
          hint: say.dough.preparation[value].hint,
        }))}
        value={kind}
        onChange={(value) => set(withKind(preparation, value))}
      />
      <PercentTable
        parts={parts}
        caption={say.fields.preparation.lines}
        percentHead="%"
        lines={lines}
        more={addable(draft, lines, 1)}
        sum={percentSaid(totalPercent(lines))}
        toLine={(ingredient) => lineToAdd(draft, lines, ingredient)}
        onChange={(next) => set({ ...preparation, lines: next })}
      />
      <SumText
        label={kind === 'preferment' ? say.dough.flours : say.dough.soakerBase}
        percent={totalPercent(baseOf(draft, preparation))}
        parts={parts}
      />
      {kind === 'preferment' && <SeedFields parts={parts} preparation={preparation} set={set} />}
      <h3>{say.fields.preparation.ready}</h3>
      <DwellFields
        label={say.fields.preparation.ready}
        window={ready}
        words={words}
        say={say}
        onChange={(value) => set({ ...preparation, ready: value })}
      />
    </>
  )
}

function SeedFields({ parts, preparation, set }: PreparationFieldsProps) {
  const { say, draft } = parts
  const begin =
    draft.profile.weight === 'g'
      ? ({ thousandths: 500_000, unit: 'g' } as const)
      : ({ thousandths: 1_000, unit: 'lb' } as const)
  return (
    <div class="setup-columns">
      <div>
        <NumberField
          label={say.fields.preparation.seedPercent}
          value={preparation.seedPercent / 1_000}
          min={0}
          max={PERCENT_MAX}
          step={5}
          decimals={3}
          unit="%"
          say={say}
          onChange={(percent) => set(withSeed(preparation, Math.round(percent * 1_000)))}
        />
        <p class="setup-hint">{say.dough.hints.seed}</p>
      </div>
      {preparation.seedPercent > 0 && (
        <div>
          <OptionalField
            label={say.fields.preparation.fedWith}
            value={preparation.fedWith}
            begin={begin}
            say={say}
            onChange={(fedWith) => set({ ...preparation, fedWith })}
          >
            {(value) => (
              <WeightField
                label={say.fields.preparation.fedWith}
                value={value}
                say={say}
                onChange={(fedWith) => set({ ...preparation, fedWith })}
              />
            )}
          </OptionalField>
          <p class="setup-hint">{say.dough.hints.fedWith}</p>
        </div>
      )}
    </div>
  )
}

/** What is not built from seed is not fed. */
function withSeed(preparation: Preparation, seedPercent: number): Preparation {
  return { ...preparation, seedPercent, fedWith: seedPercent === 0 ? null : preparation.fedWith }
}

function withKind(preparation: Preparation, kind: Preparation['kind']): Preparation {
  return kind === 'soaker' ? { ...withSeed(preparation, 0), kind } : { ...preparation, kind }
}

/** What is 100 %: a pre-ferment's flour, all of a soaker but its water. */
function baseOf(shop: Shop, { kind, lines }: Preparation): readonly Share[] {
  const isOf = ({ ingredientId }: Share, of: 'flour' | 'water') => shop.ingredients.get(ingredientId)?.kind === of
  return lines.filter((line) => (kind === 'preferment' ? isOf(line, 'flour') : !isOf(line, 'water')))
}
