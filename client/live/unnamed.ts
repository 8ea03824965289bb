import type { Role } from '../../shared-core/live/protocol.ts'

/**
 * Nobody has to name a device: one without a name is told by its role and the beginning of its id, so that two of them
 * can be told apart. Whoever shows such a name says its role in the reader's language.
 */

const MARK_LENGTH = 4

/** @example unnamed('bench', 'efe4a0…') // 'bench efe4' */
export function unnamed(role: Role, deviceId: string): string {
  return `${role} ${deviceId.slice(0, MARK_LENGTH)}`
}

/** The beginning of the id in such a name; null: somebody has given this name. @example markIn('bench efe4', 'bench') // 'efe4' */
export function markIn(name: string, role: Role): string | null {
  const mark = name.slice(role.length + 1)
  return name === `${role} ${mark}` && mark.length === MARK_LENGTH && /^[0-9a-f]+$/.test(mark) ? mark : null
}

/** @param role the role in the reader's language @example shownName({ name: 'bench efe4', role: 'bench' }, 'Línea') // 'Línea efe4' */
export function shownName({ name, role }: { readonly name: string; readonly role: Role }, roleName: string): string {
  if (name === '') return roleName
  const mark = markIn(name, role)
  return mark === null ? name : `${roleName} ${mark}`
}
