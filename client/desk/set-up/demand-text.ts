import type { Texts } from './field-text.ts'
import { moneySaid } from './say-value.ts'
import { spanTold } from './span-told.ts'

/** What pieces are worth and special days, as the list of changes tells them. */
export const DEMAND_TEXTS: Pick<Texts, 'demand' | 'specialDay'> = {
  demand: {
    region: (value, { say }) => value ?? say.form.notSaid,
    disappointCents: moneySaid,
    takeAnotherPercent: (value) => `${value} %`,
    dayOldSells: (value) => String(value),
  },
  specialDay: {
    name: (value) => value,
    kind: (value, { say }) => say.demand.kind[value].name,
    spans: (spans, telling) => {
      const told = spans.slice(-TOLD_MOST).map((span) => spanTold(span, telling))
      return [...(spans.length > TOLD_MOST ? ['…'] : []), ...told].join(', ') || '–'
    },
  },
}

/** The last ones are those that people touch. */
const TOLD_MOST = 3
