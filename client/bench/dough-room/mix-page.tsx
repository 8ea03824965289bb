import type { MixId } from '../../../shared-core/ids.ts'
import { MixerPage } from './mixer-page.tsx'
import type { RoomSheetProps } from './room-parts.ts'
import { RoomSheet } from './room-sheet.tsx'
import { ShapePage } from './shape-page.tsx'
import { WeighPage } from './weigh-page.tsx'

/** A mix as far as it has come: weighed out, at the mixer or fermenting, or divided and shaped. */
export function MixPage(props: RoomSheetProps & { readonly mixId: MixId }) {
  const { state, mixId, words } = props
  const mix = state.mixes.get(mixId)
  if (mix === undefined || mix.stage === 'ended') {
    return (
      <RoomSheet {...props} title={words.room.title}>
        <div class="bench-nothing">{words.room.mix.gone}</div>
      </RoomSheet>
    )
  }
  if (mix.stage === 'planned') return <WeighPage {...props} mix={mix} />
  return mix.stage === 'bench' ? <ShapePage {...props} mix={mix} /> : <MixerPage {...props} mix={mix} />
}
