import type { BakingRules } from '../../../shared-core/shop/rules.ts'
import type { Texts } from './field-text.ts'
import type { Telling } from './say-value.ts'
import { minuteSaid, moneySaid, spanSaid } from './say-value.ts'

const span = (value: number, telling: Telling) => spanSaid(value, telling)
const percent = (value: number) => `${value} %`

/** How loads are planned, as the list of changes tells it. */
export const BAKING_TEXTS: Pick<Texts, 'baking'> = {
  baking: {
    advice: (value, { say }) => (value ? say.options.yes : say.options.no),
    changeGainCents: moneySaid,
    stalePercentPerHour: percent,
    carryPercent: percent,
    boardWaitMs: span,
    unitPieces: String,
    toleranceMs: span,
    door: doorSaid,
    turnMs: span,
    people: (value, telling) =>
      value
        .map(({ fromMinute, people }) => telling.say.baking.people.line(people, minuteSaid(fromMinute, telling)))
        .join(', ') || telling.say.form.notSaid,
    showUntilMinute: (value, telling) => (value === null ? telling.say.form.notSaid : minuteSaid(value, telling)),
    contactCents: moneySaid,
  },
}

function doorSaid(door: BakingRules['door'], telling: Telling): string {
  const { door: names } = telling.say.baking
  const acts = ['loadMs', 'flipMs', 'outMs'] as const
  return acts.map((act) => `${names[act]} ${spanSaid(door[act], telling)}`).join(', ')
}
