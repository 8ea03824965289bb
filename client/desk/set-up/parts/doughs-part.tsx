import { allergensOfDough } from '../../../../shared-core/dough/allergens.ts'
import { doughId } from '../../../../shared-core/ids.ts'
import { NO_FORMULA } from '../../../../shared-core/shop/default-rules.ts'
import { TRAY_PIECES_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { BatchStage, Dough } from '../../../../shared-core/shop/shop.ts'
import { ALLERGENS, BATCH_STAGES } from '../../../../shared-core/shop/stages.ts'
import { NumberField } from '../fields/number-field.tsx'
import { ManyField } from '../fields/pick-field.tsx'
import { DOUGHS } from '../lists.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { AllergensFromIngredients } from './by-ingredients.tsx'
import { ListPart } from './list-part.tsx'
import { MixedByFields } from './mixed-by-fields.tsx'
import { WindowsFields } from './windows-fields.tsx'

const NEW: Dough = {
  id: doughId('new'),
  name: '',
  order: 0,
  route: ['proof', 'chill', 'rack', 'kettle', 'boards', 'oven'],
  trayPieces: 24,
  contains: ['wheat'],
  ...NO_FORMULA,
  windows: {},
  retired: false,
}

export function DoughsPart(props: SetUpProps) {
  const { draft, say } = props
  return (
    <>
      <p class="setup-caution">{say.cautions.allergens}</p>
      <ListPart
        kind={DOUGHS}
        parts={props}
        like={NEW}
        line={({ route }) => route.map((stage) => say.options.stage[stage]).join(' → ')}
      >
        {(dough, set) => (
          <>
            <ManyField
              label={say.fields.dough.route}
              options={BATCH_STAGES.filter((stage) => stage !== 'oven').map((value) => ({
                value,
                label: say.options.stage[value],
              }))}
              values={dough.route}
              onChange={(stages) => set({ ...dough, route: routeOf(dough.route, stages) })}
            />
            <NumberField
              label={say.fields.dough.trayPieces}
              value={dough.trayPieces}
              min={1}
              max={TRAY_PIECES_MAX}
              step={1}
              say={say}
              onChange={(trayPieces) => set({ ...dough, trayPieces })}
            />
            <MixedByFields parts={props} dough={dough} set={set} />
            <ManyField
              label={say.fields.dough.contains}
              options={ALLERGENS.map((value) => ({ value, label: say.options.allergen[value] }))}
              values={dough.contains}
              onChange={(contains) => set({ ...dough, contains })}
            />
            {dough.formulaId !== null && <p class="setup-hint">{say.dough.hints.contains}</p>}
            <AllergensFromIngredients parts={props} found={allergensOfDough(draft, dough.id)} />
            <details class="setup-fold">
              <summary>{say.fields.dough.windows}</summary>
              <p class="setup-caution">{say.cautions.timers}</p>
              <WindowsFields
                parts={props}
                windows={dough.windows}
                otherwise={draft.windows}
                onChange={(windows) => set({ ...dough, windows })}
              />
            </details>
          </>
        )}
      </ListPart>
    </>
  )
}

/** Every way ends in the oven. Stages that stay keep their order (a chill may come before the proof). */
function routeOf(before: readonly BatchStage[], stages: readonly BatchStage[]): readonly BatchStage[] {
  const kept = before.filter((stage) => stage !== 'oven' && stages.includes(stage))
  const isOld = kept.length === stages.length
  return [...(isOld ? kept : stages), 'oven']
}
