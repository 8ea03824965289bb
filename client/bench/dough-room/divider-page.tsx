import { useState } from 'preact/hooks'
import type { DoughId, MixId } from '../../../shared-core/ids.ts'
import type { Weight } from '../../../shared-core/shop/shop.ts'
import { milligrams, weightText } from '../../../shared-core/shop/weight.ts'
import { shownWeight } from '../../parts/shop-weight.ts'
import type { GridItem } from '../sheet.tsx'
import { KeyGrid } from '../sheet.tsx'
import { dividerTexts, weighedDoughs } from './divider-view.ts'
import { NumberPad } from './number-pad.tsx'
import type { RoomSheetProps } from './room-parts.ts'
import { RoomSheet } from './room-sheet.tsx'

export interface DividerPageProps extends RoomSheetProps {
  /** Null: which one is asked first. */
  readonly doughId: DoughId | null
  readonly mixId: MixId | null
}

/** A few pieces weighed behind the divider: typed one after the other, then saved as one check. */
export function DividerPage(props: DividerPageProps) {
  const { doughId, mixId, shop, words, send, open } = props
  const [weights, setWeights] = useState<readonly Weight[]>([])
  const dough = doughId === null ? undefined : shop.doughs.get(doughId)
  if (dough === undefined || dough.pieceWeight === null) return <WhichDough {...props} />
  const say = words.room.divider
  const unit: Weight['unit'] = shop.profile.weight === 'g' ? 'g' : 'oz'
  const save: GridItem = {
    id: 'save-check',
    label: say.save(weights.length),
    tone: weights.length === 0 ? 'plain' : 'strong',
    refusal: weights.length === 0 ? words.room.pad.typeFirst : undefined,
    onPress: () => {
      send({ type: 'weighPieces', doughId: dough.id, mixId, weights })
      setWeights([])
    },
  }
  const should = say.should(shownWeight(milligrams(dough.pieceWeight), shop.profile.weight))
  const typed = weights.length === 0 ? dividerTexts(dough.id, props) : [say.weighed(weights.map(weightText))]
  return (
    <NumberPad
      {...props}
      title={`${say.title}: ${dough.name}`}
      hint={[should, ...typed].join('; ')}
      unit={unit}
      saveLabel={say.add}
      more={[save]}
      onBack={() => open(mixId === null ? { kind: 'readings' } : { kind: 'mix', mixId })}
      onSave={(thousandths) => setWeights((before) => [...before, { thousandths, unit }])}
    />
  )
}

function WhichDough(props: DividerPageProps) {
  const { words, sizes, room, open, mixId } = props
  const say = words.room.divider
  const items = weighedDoughs(props).map(
    ({ id, name, pieceWeight }): GridItem => ({
      id,
      label: name,
      details: [...(pieceWeight === null ? [] : [weightText(pieceWeight)]), ...dividerTexts(id, props)],
      onPress: () => open({ kind: 'divider', doughId: id, mixId }),
    }),
  )
  return (
    <RoomSheet {...props} title={say.title} detail={say.whichDough}>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={2}
        rows={room.rows}
        widthPx={room.widthPx}
        items={items}
        nothing={say.nothing}
      />
    </RoomSheet>
  )
}
