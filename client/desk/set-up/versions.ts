import type { ChangeTold } from '../../../shared-core/shop/set-up-told.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { SetUpSentences } from '../../words/set-up.ts'

/** One change of the set-up as the server's record has it: `GET /api/v1/set-up/versions`. */
export interface Version {
  readonly seq: number
  readonly atMs: EpochMs
  /** As it was called; null for the terminal's and what has no name. */
  readonly device: string | null
  readonly isPlanned: boolean
  readonly told: readonly ChangeTold[]
  /** Planned changes that no longer fitted by then. */
  readonly lost: number
}

/** More than this say less. */
const LINES_MOST = 6

/** What a version changed, a line for each thing. @example ["Variety Sesame: price", "Shelf 5 is retired"] */
export function versionLines({ told, lost }: Version, say: SetUpSentences): readonly string[] {
  if (told.some(({ entity, what }) => entity === 'profile' && what === 'added')) return [say.versions.first]
  const lines = told.slice(0, LINES_MOST).map((one) => lineOf(one, say))
  return [
    ...lines,
    ...(told.length > LINES_MOST ? [say.versions.more(told.length - LINES_MOST)] : []),
    ...(lost > 0 ? [say.versions.lost(lost)] : []),
  ]
}

function lineOf({ entity, id, name, what, fields }: ChangeTold, say: SetUpSentences): string {
  const weekday = entity === 'weekday' ? say.options.weekday[Number(id) - 1] : undefined
  const whole = weekday ?? say.entity(entity, entity === 'profile' ? null : name)
  switch (what) {
    case 'added':
      return say.save.added(whole)
    case 'retired':
      return weekday === undefined ? say.save.retired(whole) : `${whole}: ${say.form.asUsual}`
    case 'back':
      return weekday === undefined ? say.save.back(whole) : `${whole}: ${say.form.ownHours}`
    case 'moved':
      return `${whole}: ${say.save.moved}`
    case 'changed':
      return `${whole}: ${fields.map((field) => fieldName(entity, field, say)).join(', ')}`
  }
}

/** Windows have their stages as fields; all others are called as on their form. */
function fieldName(entity: ChangeTold['entity'], field: string, say: SetUpSentences): string {
  if (field === 'order') return say.save.moved
  const names: Readonly<Record<string, string>> = entity === 'windows' ? say.options.window : say.fields[entity]
  return names[field] ?? field
}
