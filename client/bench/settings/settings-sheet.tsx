import { useState } from 'preact/hooks'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { LiveState, ShopStore } from '../../live/shop-store.ts'
import { kitchenRoomWords } from '../../words/bench-kitchen.ts'
import type { SettingsWords } from '../../words/settings.ts'
import { settingsWords, versionText } from '../../words/settings.ts'
import type { SheetParts } from '../sheet.tsx'
import { KeyGrid, Sheet } from '../sheet.tsx'
import { columnsOf } from '../sheets/more-sheet.tsx'
import { KitchenPart } from './kitchen-part.tsx'
import { LookPart } from './look-part.tsx'
import { NamePart } from './name-part.tsx'
import { PedalPart } from './pedal-part.tsx'
import { PersonPart } from './person-part.tsx'
import { SizePart } from './size-part.tsx'
import { SoundPart } from './sound-part.tsx'

export interface SettingsProps extends SheetParts {
  readonly store: ShopStore
  readonly live: LiveState
  readonly shop: Shop
  readonly onTrySound: () => void
}

/** What each part of the settings is made with. */
export type SettingsPart = SettingsProps & { readonly say: SettingsWords }

type Mode = 'name' | 'person' | 'station' | 'kitchen' | 'size' | 'look' | 'sound' | 'pedals'

/** What this tablet is, one part at a time: nothing here needs to be dragged. */
export function SettingsSheet(props: SettingsProps) {
  const { words, sizes, room, live, shop } = props
  const say = settingsWords(words)
  const [mode, setMode] = useState<Mode | null>(null)
  const modes: readonly (readonly [Mode, string])[] = [
    ['name', say.name],
    ['person', say.comfort.person],
    ['station', say.station],
    ...(shop.kitchenStations.size === 0
      ? []
      : ([['kitchen', kitchenRoomWords(words).kitchen.stations.title]] as const)),
    ['size', say.diagonal],
    ['look', say.comfort.look],
    ['sound', say.volume],
    ['pedals', say.pedals],
  ]
  const version = live.version === '' ? undefined : versionText(say, live)
  const title = modes.find(([one]) => one === mode)?.[1] ?? say.title
  const close = mode === null ? props.onClose : () => setMode(null)
  return (
    <Sheet {...props} title={title} detail={version} onClose={close} backLabel={mode === null ? undefined : say.title}>
      {mode === null ? (
        <KeyGrid
          words={words}
          sizes={sizes}
          room={room}
          columns={columnsOf(props)}
          rows={room.rows}
          widthPx={room.widthPx}
          items={modes.map(([id, label]) => ({ id: `part ${id}`, label, onPress: () => setMode(id) }))}
        />
      ) : (
        <div class="bench-settings">
          <Part {...props} say={say} mode={mode} />
        </div>
      )}
    </Sheet>
  )
}

function Part(props: SettingsPart & { readonly mode: Mode }) {
  switch (props.mode) {
    case 'name':
      return <NamePart {...props} />
    case 'person':
      return <PersonPart {...props} />
    case 'look':
      return <LookPart {...props} />
    case 'station':
      return <StationPart {...props} />
    case 'kitchen':
      return <KitchenPart {...props} />
    case 'size':
      return <SizePart {...props} />
    case 'sound':
      return <SoundPart {...props} />
    case 'pedals':
      return <PedalPart {...props} />
  }
}

/** The station whose acts stand large here. */
function StationPart(props: SettingsPart) {
  const { store, live, shop, say, room } = props
  const { stationId } = live.settings
  const stations = [...shop.stations.values()]
    .filter((station) => !station.retired)
    .sort((one, other) => one.order - other.order)
    .map(({ id, name, acts }) => ({
      id,
      label: name,
      details: [say.acts(acts)],
      chosen: stationId === id,
      onPress: () => store.changeSettings({ stationId: id }),
    }))
  const all = {
    id: 'all',
    label: say.allStations,
    chosen: stationId === null,
    onPress: () => store.changeSettings({ stationId: null }),
  }
  return (
    <KeyGrid {...props} columns={columnsOf(props)} rows={room.rows} widthPx={room.widthPx} items={[all, ...stations]} />
  )
}
