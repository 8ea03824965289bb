import type { Role } from '../../../shared-core/live/protocol.ts'
import type { DeskWords } from '../../words/desk.ts'

const ROLES: readonly Role[] = ['wall', 'bench', 'counter', 'desk']

interface RoleChoiceProps {
  readonly words: DeskWords
  readonly title: string
  /** Tells two choices on one page apart. */
  readonly group: string
  readonly role: Role
  readonly onChoose: (role: Role) => void
}

export function RoleChoice({ words, title, group, role, onChoose }: RoleChoiceProps) {
  return (
    <fieldset class="desk-field desk-roles">
      <legend>{title}</legend>
      {ROLES.map((one) => (
        <label key={one} class="desk-radio">
          <input type="radio" name={group} checked={one === role} onChange={() => onChoose(one)} />
          {words.desk.screens.role[one]}
        </label>
      ))}
    </fieldset>
  )
}
