import { kitchenStationId, portionId } from '../../../../shared-core/ids.ts'
import { inUse } from '../../../../shared-core/shop/in-order.ts'
import type { KitchenStation, Portion } from '../../../../shared-core/shop/kitchen.ts'
import { pickableKitchenStations } from '../../../../shared-core/shop/pickable-kitchen.ts'
import { HANDS_MAX, PULL_MS_MAX, TRAY_PORTIONS_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import { ALLERGENS } from '../../../../shared-core/shop/stages.ts'
import { durationMs } from '../../../../shared-core/units.ts'
import { NumberField } from '../fields/number-field.tsx'
import { OptionalField } from '../fields/optional-field.tsx'
import { ManyField } from '../fields/pick-field.tsx'
import { SpanField } from '../fields/span-field.tsx'
import { KITCHEN_STATIONS, PORTIONS } from '../lists.ts'
import { spanSaid } from '../say-value.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { ListPart } from './list-part.tsx'

const NEW_STATION: KitchenStation = { id: kitchenStationId('new'), name: '', order: 0, hands: 1, retired: false }
const NEW_PORTION: Portion = {
  id: portionId('new'),
  name: '',
  order: 0,
  contains: [],
  pullMs: null,
  trayPortions: 12,
  retired: false,
}

/** Where things are made to order, and what is prepared ahead for it. */
export function KitchenPart(props: SetUpProps) {
  const { say } = props
  const { heads, handsHint, handsLine } = say.kitchen
  return (
    <>
      <h3>{heads.stations}</h3>
      {inUse(props.draft.kitchenStations).length === 0 && <UsualStations {...props} />}
      <ListPart kind={KITCHEN_STATIONS} parts={props} like={NEW_STATION} line={({ hands }) => handsLine(hands)}>
        {(station, set) => (
          <>
            <NumberField
              label={say.fields.kitchenStation.hands}
              value={station.hands}
              min={1}
              max={HANDS_MAX}
              step={1}
              say={say}
              onChange={(hands) => set({ ...station, hands })}
            />
            <p class="setup-hint">{handsHint}</p>
          </>
        )}
      </ListPart>
      <h3>{heads.portions}</h3>
      <p class="setup-caution">{say.cautions.allergens}</p>
      <ListPart kind={PORTIONS} parts={props} like={NEW_PORTION} line={(portion) => portionLine(portion, props)}>
        {(portion, set) => <PortionFields {...props} portion={portion} set={set} />}
      </ListPart>
    </>
  )
}

function UsualStations({ draft, say, change }: SetUpProps) {
  const usual = pickableKitchenStations(draft.profile.language)
  return (
    <p>
      <button type="button" class="desk-button" onClick={() => change(usual.map(KITCHEN_STATIONS.change))}>
        {say.form.pickOne}: {usual.map(({ name }) => name).join(', ')}
      </button>
    </p>
  )
}

function portionLine({ contains, pullMs, trayPortions }: Portion, { say, words, draft }: SetUpProps): string {
  const pull = pullMs === null ? null : spanSaid(pullMs, { say, words, shop: draft })
  const allergens = contains.map((allergen) => say.options.allergen[allergen])
  return [say.kitchen.portionLine(pull, trayPortions), ...allergens].join(', ')
}

interface PortionFieldsProps extends SetUpProps {
  readonly portion: Portion
  readonly set: (portion: Portion) => void
}

/** What a ball of dough stands out until it can be stretched; common practice, no source. */
const PULL_MS = durationMs(90 * 60_000)

function PortionFields({ say, words, portion, set }: PortionFieldsProps) {
  const pull = say.fields.portion.pullMs
  return (
    <>
      <ManyField
        label={say.fields.portion.contains}
        options={ALLERGENS.map((value) => ({ value, label: say.options.allergen[value] }))}
        values={portion.contains}
        onChange={(contains) => set({ ...portion, contains })}
      />
      <OptionalField
        label={pull}
        value={portion.pullMs}
        begin={PULL_MS}
        say={say}
        onChange={(pullMs) => set({ ...portion, pullMs })}
      >
        {(ms) => (
          <SpanField
            label={pull}
            ms={ms}
            minMs={0}
            maxMs={PULL_MS_MAX}
            units={['min', 'h']}
            words={words}
            say={say}
            onChange={(pullMs) => set({ ...portion, pullMs })}
          />
        )}
      </OptionalField>
      <p class="setup-hint">{say.kitchen.pullHint}</p>
      <NumberField
        label={say.fields.portion.trayPortions}
        value={portion.trayPortions}
        min={1}
        max={TRAY_PORTIONS_MAX}
        step={1}
        say={say}
        onChange={(trayPortions) => set({ ...portion, trayPortions })}
      />
      <p class="setup-hint">{say.kitchen.trayHint}</p>
    </>
  )
}
