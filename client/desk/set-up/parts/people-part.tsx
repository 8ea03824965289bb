import { personId } from '../../../../shared-core/ids.ts'
import type { Person } from '../../../../shared-core/shop/shop.ts'
import { PEOPLE } from '../lists.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { ListPart } from './list-part.tsx'

const NEW: Person = { id: personId('new'), name: '', order: 0, retired: false }

export function PeoplePart(props: SetUpProps) {
  return <ListPart kind={PEOPLE} parts={props} like={NEW} line={() => ''} />
}
