import type { Build } from '../../../shared-core/dough/mix.ts'
import type { PreparationDue } from '../../../shared-core/dough/preparations-due.ts'
import { preparationsDue } from '../../../shared-core/dough/preparations-due.ts'
import type { PreparationId } from '../../../shared-core/ids.ts'
import type { Weight } from '../../../shared-core/shop/shop.ts'
import { milligrams } from '../../../shared-core/shop/weight.ts'
import { Key } from '../../parts/key.tsx'
import { shownWeight } from '../../parts/shop-weight.ts'
import { ListRows } from '../sheets/list-rows.tsx'
import { NumberPad } from './number-pad.tsx'
import type { RoomParts, RoomSheetProps } from './room-parts.ts'
import { RoomSheet } from './room-sheet.tsx'

interface Row {
  readonly id: string
  readonly title: string
  readonly texts: readonly string[]
  /** To be made or fed; null: it stands there. */
  readonly due: PreparationDue | null
  readonly build: Build | null
}

/** What is to be made or fed today, soonest first, each by one touch; below it what stands and ripens. */
export function PreparationsPage(props: RoomSheetProps) {
  const { words, room, send, open } = props
  const { made } = words.room
  const rows = preparationRows(props)
  return (
    <RoomSheet {...props} title={made.title} detail={words.times.clock(props.nowMs)}>
      <ListRows
        {...props}
        items={rows}
        nothing={made.nothing}
        keysOf={({ due, build }) => (
          <>
            {due !== null && (
              <div class="bench-list-key" style={{ width: `${1.4 * room.keyPx}px` }}>
                <Key onPress={() => open({ kind: 'build', preparationId: due.preparationId, forDate: due.forDate })}>
                  <span class="bench-small">{made.other}</span>
                </Key>
              </div>
            )}
            <div class="bench-list-key" style={{ width: `${1.7 * room.keyPx}px` }}>
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

export function preparationRows(parts: RoomParts): readonly Row[] {
  const { state, shop, nowMs, localDate, noonOf, words } = parts
  const { made } = words.room
  const nameOf = (id: PreparationId) => shop.preparations.get(id)?.name ?? ''
  const weight = (amount: number) => shownWeight(amount, shop.profile.weight)
  const due = preparationsDue(state, shop, nowMs, localDate, noonOf).map((one): Row => {
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
      ],
      due: one,
      build: null,
    }
  })
  const standing = [...state.builds.values()]
    .filter(({ dropped }) => !dropped)
    .sort((one, other) => one.ready.latestAtMs - other.ready.latestAtMs || (one.id < other.id ? -1 : 1))
    .map(
      (build): Row => ({
        id: build.id,
        title: nameOf(build.preparationId),
        texts: [`${weight(build.milligrams)}, ${made.ripe(build.ready.earliestAtMs, build.ready.latestAtMs, nowMs)}`],
        due: null,
        build,
      }),
    )
  return [...due, ...standing]
}

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
