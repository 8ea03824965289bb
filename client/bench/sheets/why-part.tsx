import type { PlanLoad } from '../../../shared-core/live/plan.ts'
import type { BenchWords } from '../../words/bench.ts'
import type { SheetParts } from '../sheet.tsx'
import { ListRows } from './list-rows.tsx'

/** Why a load is called for, line by line, and what its varieties should not meet. */
export function WhyPart(props: SheetParts & { readonly load: PlanLoad }) {
  const { load, words, room } = props
  return (
    <div class="bench-notes">
      <div class="bench-quiet">
        {load.isPinned ? words.advice.set : words.advice.advised}: {words.advice.times(load)}
      </div>
      <ListRows
        {...props}
        room={{ ...room, rows: Math.max(2, room.rows - 1) }}
        items={whyItems(load, words)}
        nothing=""
        keysOf={() => null}
      />
    </div>
  )
}

/** Contacts first: they are to be done something about before the load. */
export function whyItems({ lines, why, contacts }: PlanLoad, { advice, line, names, shift }: BenchWords) {
  const met = contacts.map((contact) => ({
    id: `contact ${contact.varietyId}`,
    title: advice.contactShort(contact),
    texts: [advice.contact(contact), shift.care.caution],
  }))
  const reasons = lines.map((one) => ({
    id: one.varietyId,
    title: line.contents([one]) || names.variety(one.varietyId),
    texts: why.filter(({ varietyId }) => varietyId === one.varietyId).map((reason) => advice.why(reason)),
  }))
  return [...met, ...reasons]
}
