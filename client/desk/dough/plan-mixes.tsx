import type { FormulaId } from '../../../shared-core/ids.ts'
import { milligrams } from '../../../shared-core/shop/weight.ts'
import { Sideways } from '../sideways.tsx'
import type { FlourTyped, HandFormula, HandPlan } from './plan-view.ts'
import { evenly, flourText } from './plan-view.ts'
import type { RoomParts } from './room.ts'

interface MixesProps extends RoomParts {
  readonly hand: HandPlan
  readonly typed: FlourTyped
  readonly onTyped: (typed: FlourTyped) => void
  readonly unit: 'kg' | 'lb'
}

/** The mixes by formula: their flour can be typed otherwise, and their number changed. */
export function PlanMixes(props: MixesProps) {
  const { say, hand } = props
  return (
    <>
      <h3>{say.plan.mixesTitle}</h3>
      {hand.formulas.map((one) => (
        <FormulaMixes key={one.formula.id} {...props} one={one} />
      ))}
      {hand.mixes === null && (
        <p class="desk-trouble" role="alert">
          {say.plan.unreadable}
        </p>
      )}
    </>
  )
}

const MIXES_MAX = 12

function FormulaMixes(props: MixesProps & { readonly one: HandFormula }) {
  const { words, say, room, typed, onTyped, unit, one } = props
  const { need, formula, isByHand, mixes } = one
  const set = (texts: readonly string[] | null) => onTyped(withTexts(typed, formula.id, texts))
  const split = (count: number) => set(evenly(need.flourMilligrams, count, unit))
  const { mixer } = need
  const why = need.why.map(({ code, milligrams: weight }) => say.plan.doughReason(code, room.weight(weight)))
  const mixedOn = need.isMixDateClosed ? say.plan.mixedOnClosed : say.plan.mixedOn
  const fits =
    mixer === null
      ? ''
      : say.plan.fits(need.fits, room.weight(mixer.leastMilligrams), room.weight(mixer.mostMilligrams))
  return (
    <section class="dough-formula" aria-label={formula.name}>
      <p>
        <strong>
          {say.plan.formulaHead(
            formula.name,
            need.mixes,
            room.weight(need.flourMilligrams),
            room.weight(need.doughMilligrams),
          )}
        </strong>
      </p>
      <p class="desk-quiet">{`${why.join(', ')}; ${mixedOn(words.times.date(need.mixDate))}`}</p>
      {fits !== '' && <p class="desk-trouble">{fits}</p>}
      <MixTable {...props} />
      <div class="desk-line">
        <button
          type="button"
          aria-label={say.plan.fewerOf(formula.name)}
          disabled={mixes.length <= 1}
          onClick={() => split(mixes.length - 1)}
        >
          {say.plan.fewerMixes}
        </button>
        <button
          type="button"
          aria-label={say.plan.moreOf(formula.name)}
          disabled={mixes.length >= MIXES_MAX}
          onClick={() => split(mixes.length + 1)}
        >
          {say.plan.moreMixes}
        </button>
        {isByHand && (
          <button type="button" onClick={() => set(null)}>
            {say.plan.asPlanned}
          </button>
        )}
        <Cost {...props} />
      </div>
    </section>
  )
}

function MixTable({ words, say, room, typed, onTyped, unit, one }: MixesProps & { readonly one: HandFormula }) {
  const { formula, mixes } = one
  const perUnit = milligrams({ thousandths: 1_000, unit })
  const texts = typed.get(formula.id) ?? mixes.map((mix) => flourText(mix?.flourMilligrams ?? 0, perUnit))
  const { mixColumns: columns } = say.plan
  return (
    <Sideways name={formula.name}>
      <table class="dough-mixes">
        <thead>
          <tr>
            <th>{columns.mix}</th>
            <th>
              {columns.flour}, {unit}
            </th>
            <th class="desk-number">{columns.dough}</th>
            <th>{columns.gives}</th>
          </tr>
        </thead>
        <tbody>
          {mixes.map((mix, index) => (
            <tr key={index}>
              <th scope="row" class="dough-together">
                {say.plan.mixName(index + 1)}
              </th>
              <td>
                <input
                  class={`desk-short${mix === null ? ' dough-wrong' : ''}`}
                  inputMode="decimal"
                  aria-label={say.plan.flourOf(formula.name, index + 1)}
                  aria-invalid={mix === null}
                  value={texts[index] ?? ''}
                  onFocus={(event) => event.currentTarget.select()}
                  onInput={(event) => {
                    const { value } = event.currentTarget
                    onTyped(
                      withTexts(
                        typed,
                        formula.id,
                        texts.map((text, at) => (at === index ? value : text)),
                      ),
                    )
                  }}
                />
              </td>
              <td class="desk-number">{mix === null ? '?' : room.weight(mix.doughMilligrams)}</td>
              <td>
                {mix?.gives.map(({ doughId, pieces }) => `${pieces} ${words.names.dough(doughId)}`).join(', ')}
                {mix !== null && mix.limit !== null && <span class="desk-trouble"> {say.plan[mix.limit]}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Sideways>
  )
}

const MINUTE_MS = 60_000

function Cost({ words, say, one }: MixesProps & { readonly one: HandFormula }) {
  if (!one.isByHand) return null
  const [minutes, change] = [Math.round(one.mixerMs / MINUTE_MS), Math.round(one.mixerChangeMs / MINUTE_MS)]
  const changes = one.changes.map(({ doughId, pieces }) =>
    pieces > 0
      ? say.plan.costs(pieces, words.names.dough(doughId))
      : say.plan.costsShort(-pieces, words.names.dough(doughId)),
  )
  return (
    <span role="status">
      {say.plan.byHand}: {changes.length === 0 ? say.plan.costsNothing : changes.join(', ')};{' '}
      {say.plan.mixerTime(minutes, change)}
    </span>
  )
}

function withTexts(typed: FlourTyped, formula: FormulaId, texts: readonly string[] | null): FlourTyped {
  const next = new Map(typed)
  if (texts === null) next.delete(formula)
  else next.set(formula, texts)
  return next
}
