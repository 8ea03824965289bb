import type { PreparationDue } from '../../../shared-core/dough/preparations-due.ts'
import type { PreparationId } from '../../../shared-core/ids.ts'
import type { Weight } from '../../../shared-core/shop/shop.ts'
import { milligrams } from '../../../shared-core/shop/weight.ts'
import { Key } from '../../parts/key.tsx'
import { ListRows } from '../sheets/list-rows.tsx'
import { splitRoom } from '../sheets/split.ts'
import { NumberPad } from './number-pad.tsx'
import { preparationRows } from './preparations-view.ts'
import type { RoomSheetProps } from './room-parts.ts'
import { RoomSheet } from './room-sheet.tsx'

/** What is to be made or fed today, soonest first, each by one touch; below it what stands and ripens. */
export function PreparationsPage(props: RoomSheetProps) {
  const { words, room, send, open } = props
  const { made } = words.room
  const rows = preparationRows(props)
  const { isNarrow } = splitRoom(room)
  return (
    <RoomSheet {...props} title={made.title} detail={words.times.clock(props.nowMs)}>
      <ListRows
        {...props}
        items={rows}
        nothing={made.nothing}
        keysOf={({ due, build }) => (
          <>
            {due !== null && (
              <div class="bench-list-key" style={{ width: `${(isNarrow ? 1.25 : 1.4) * room.keyPx}px` }}>
                <Key onPress={() => open({ kind: 'build', preparationId: due.preparationId, forDate: due.forDate })}>
                  <span class="bench-small">{made.other}</span>
                </Key>
              </div>
            )}
            <div class="bench-list-key" style={{ width: `${(isNarrow ? 1.5 : 1.7) * room.keyPx}px` }}>
              {due !== null && (
                <Key
                  tone={due.status === 'coming' ? 'strong' : due.status === 'due' ? 'act' : 'late'}
                  onPress={() => send(makes(due))}
                >
                  <span class="bench-label">{due.forDate === null ? made.fed : made.made}</span>
                </Key>
              )}
              {build !== null && (
                <Key tone="strong" onPress={() => send({ type: 'dropBuild', buildId: build.id })}>
                  <span class="bench-small">{made.drop}</span>
                </Key>
              )}
            </div>
          </>
        )}
      />
    </RoomSheet>
  )
}

const makes = ({ preparationId, milligrams: amount, forDate }: PreparationDue) =>
  ({ type: 'makePreparation', preparationId, milligrams: amount, forDate }) as const

/** Another weight than the plan's, typed. */
export function BuildPage(
  props: RoomSheetProps & { readonly preparationId: PreparationId; readonly forDate: string | null },
) {
  const { shop, preparationId, forDate, send, open } = props
  const unit: Weight['unit'] = shop.profile.weight === 'g' ? 'g' : 'lb'
  const back = () => open({ kind: 'preparations' })
  return (
    <NumberPad
      {...props}
      title={shop.preparations.get(preparationId)?.name ?? ''}
      unit={unit}
      onBack={back}
      onSave={(thousandths) => {
        send({ type: 'makePreparation', preparationId, milligrams: milligrams({ thousandths, unit }), forDate })
        back()
      }}
    />
  )
}
