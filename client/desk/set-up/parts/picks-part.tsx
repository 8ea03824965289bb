import { inUse } from '../../../../shared-core/shop/in-order.ts'
import { pickableDoughs } from '../../../../shared-core/shop/pickable.ts'
import { CENTS_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { Variety } from '../../../../shared-core/shop/shop.ts'
import { NumberField } from '../fields/number-field.tsx'
import { hasRoom, VARIETIES } from '../lists.ts'
import { pickVariety, unpickVariety, varietyPicks } from '../picks.ts'
import { hashOf } from '../route.ts'
import type { SetUpProps } from '../set-up-parts.ts'

/** What is made, ticked in a list under each dough; doughs and toppings come along with the first that needs them. */
export function PicksPart(props: SetUpProps) {
  const { draft, say } = props
  const picks = varietyPicks(draft)
  const doughs = new Map([
    ...inUse(draft.doughs).map(({ id, name }) => [id, name] as const),
    ...pickableDoughs(draft.profile.language)
      .filter(({ id }) => draft.doughs.get(id)?.retired !== false)
      .map(({ id, name }) => [id, name] as const),
  ])
  return (
    <>
      <p class="setup-hint">{say.guide.prices}</p>
      <div class="setup-picks">
        {[...doughs].map(([doughId, name]) => (
          <fieldset key={doughId} class="setup-pick">
            <legend>{say.entity('dough', name)}</legend>
            <ul>
              {picks
                .filter(({ variety }) => variety.doughId === doughId)
                .map(({ variety, isPicked }) => (
                  <PickRow key={variety.id} parts={props} variety={variety} isPicked={isPicked} />
                ))}
            </ul>
          </fieldset>
        ))}
      </div>
      <p class="setup-caution">{say.cautions.allergens}</p>
      <p>
        <a href={hashOf({ kind: 'part', part: 'varieties' })}>{say.guide.ownVarieties}</a>
      </p>
    </>
  )
}

interface PickRowProps {
  readonly parts: SetUpProps
  readonly variety: Variety
  readonly isPicked: boolean
}

function PickRow({ parts, variety, isPicked }: PickRowProps) {
  const { draft, say, change } = parts
  return (
    <li class="setup-pick-row" data-variety={variety.id}>
      <label class="setup-option setup-tick">
        <input
          type="checkbox"
          checked={isPicked}
          disabled={!isPicked && !hasRoom(VARIETIES, draft)}
          onChange={() => change(isPicked ? unpickVariety(draft, variety) : pickVariety(draft, variety))}
        />
        <span class="setup-option-text">{variety.name}</span>
      </label>
      {isPicked && (
        <NumberField
          label={`${say.fields.variety.priceCents}: ${variety.name}`}
          value={variety.priceCents / 100}
          min={0}
          max={CENTS_MAX / 100}
          decimals={2}
          isLabelSilent
          say={say}
          onChange={(amount) => change([VARIETIES.change({ ...variety, priceCents: Math.round(amount * 100) })])}
        />
      )}
    </li>
  )
}
