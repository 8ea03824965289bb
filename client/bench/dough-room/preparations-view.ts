import type { Build } from '../../../shared-core/dough/mix.ts'
import { preparationLines } from '../../../shared-core/dough/percents.ts'
import type { PreparationDue } from '../../../shared-core/dough/preparations-due.ts'
import { preparationsDue } from '../../../shared-core/dough/preparations-due.ts'
import type { PreparationId } from '../../../shared-core/ids.ts'
import { shownWeight } from '../../parts/shop-weight.ts'
import type { RoomParts } from './room-parts.ts'

export interface PreparationRow {
  readonly id: string
  readonly title: string
  readonly texts: readonly string[]
  /** To be made or fed; null: it stands there. */
  readonly due: PreparationDue | null
  readonly build: Build | null
}

/** What is to be made or fed, the soonest first; then what stands, by when it must be used. */
export function preparationRows(parts: RoomParts): readonly PreparationRow[] {
  const { state, shop, nowMs, localDate, noonOf, words } = parts
  const { made } = words.room
  const nameOf = (id: PreparationId) => shop.preparations.get(id)?.name ?? ''
  const weight = (amount: number) => shownWeight(amount, shop.profile.weight)
  const due = preparationsDue(state, shop, nowMs, localDate, noonOf).map((one): PreparationRow => {
    const { begin, forDate, status, preparationId } = one
    const when = words.times.when({ atMs: begin.targetAtMs, status }, nowMs)
    const amount = weight(one.milligrams)
    return {
      id: `${preparationId} ${forDate ?? 'feed'}`,
      title:
        forDate === null
          ? parts.words.room.acts.feed(nameOf(preparationId))
          : parts.words.room.acts.begin(nameOf(preparationId)),
      texts: [
        `${words.times.at(begin.targetAtMs)}, ${when}`,
        forDate === null ? amount : made.forDate(amount, forDate),
        ...partsOf(one, parts),
      ],
      due: one,
      build: null,
    }
  })
  const standing = [...state.builds.values()]
    .filter(({ dropped }) => !dropped)
    .sort((one, other) => one.ready.latestAtMs - other.ready.latestAtMs || (one.id < other.id ? -1 : 1))
    .map(
      (build): PreparationRow => ({
        id: build.id,
        title: nameOf(build.preparationId),
        texts: [`${weight(build.milligrams)}, ${made.ripe(build.ready.earliestAtMs, build.ready.latestAtMs, nowMs)}`],
        due: null,
        build,
      }),
    )
  return [...due, ...standing]
}

/** What is weighed into it, its seed last. */
function partsOf({ preparationId, milligrams, seedMilligrams }: PreparationDue, { shop, words }: RoomParts): string[] {
  const preparation = shop.preparations.get(preparationId)
  if (preparation === undefined) return []
  const weight = (amount: number) => shownWeight(amount, shop.profile.weight)
  const lines = preparationLines(preparation, milligrams).map(
    (line) => `${shop.ingredients.get(line.ingredientId)?.name ?? ''} ${weight(line.milligrams)}`,
  )
  return seedMilligrams === 0 ? lines : [...lines, words.room.made.seed(weight(seedMilligrams))]
}
