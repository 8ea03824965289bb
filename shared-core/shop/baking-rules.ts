import { clockText } from './human-time.ts'
import type { Misfit, Rule } from './misfit.ts'
import { broken } from './misfit.ts'
import type { BakingRules } from './rules.ts'
import type { SetUpParts } from './set-up-parts.ts'

const BAKING = { entity: 'baking', id: null } as const

/** Times from which people are there, in order, none twice. */
export function bakingMisfits({ people }: BakingRules): Misfit[] {
  const rules = people.map(({ fromMinute }, at): Rule => {
    const before = people[at - 1]?.fromMinute ?? -1
    const [text, last] = [clockText(fromMinute), clockText(Math.max(0, before))]
    const wrong = `${text} is not after ${last}, the time before it in the list.`
    return [fromMinute <= before, `people/${at}/fromMinute`, wrong, 'Times in order, each of them once.']
  })
  return broken(BAKING, rules)
}

/** What the plan is to heed against the shop's usual hours; a weekday's own hours may leave nothing of a wish. */
export function bakingCrossMisfits({ hours, baking, shelves }: SetUpParts): Misfit[] {
  if (hours === null) return []
  const { ovenReadyMinute: ready, openMinute: open, closeMinute: close } = hours
  const until = baking?.showUntilMinute ?? null
  const show: Rule = [
    until !== null && (until <= open || until > close),
    'showUntilMinute',
    `Varieties are wanted on show until ${clockText(until ?? 0)}, when the shop is closed.`,
    `After ${clockText(open)}, and ${clockText(close)} at the latest.`,
  ]
  const empty = shelves.flatMap(({ id, retired, emptyByMinute }) => {
    const by = emptyByMinute ?? close
    const wrong = `It is to be empty by ${clockText(by)}, before the oven is ready.`
    return broken({ entity: 'shelf', id }, [
      [!retired && by <= ready, 'emptyByMinute', wrong, `After ${clockText(ready)}, or the shelf retired.`],
    ])
  })
  return [...broken(BAKING, [show]), ...empty]
}
