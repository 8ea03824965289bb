import { useState } from 'preact/hooks'
import type { StationId } from '../../shared-core/ids.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import type { KitchenStation } from '../../shared-core/shop/kitchen.ts'
import { COMING_KEY, kitchenPedal } from '../parts/calls.ts'
import { Key } from '../parts/key.tsx'
import { useLearning } from '../parts/use-learning.ts'
import type { SheetPartProps } from './settings-sheet.tsx'
import { Field } from './settings-sheet.tsx'

const NO_STATIONS: ReadonlyMap<string, KitchenStation> = new Map()

/** Ties pedals and one-key pads: each key of theirs to one station, or to "coming". */
export function PedalSettings({ store, live, shop, settingsWords: say }: SheetPartProps) {
  const { keys } = live.settings
  const [learning, setLearning] = useState<StationId | null>(null)
  const stations = [...(shop?.stations.values() ?? [])].filter((station) => !station.retired && station.acts.length > 0)
  useLearning(learning, (code, station) => {
    store.changeSettings({ keys: { ...keys, [code]: station } })
    setLearning(null)
  })
  const forget = (code: string) =>
    store.changeSettings({ keys: Object.fromEntries(Object.entries(keys).filter(([one]) => one !== code)) })
  const row = (id: StationId, name: string, detail: string) => (
    <div key={id} class="wall-pedal">
      <div class="wall-pedal-name">
        <strong>{name}</strong>
        <span>{detail}</span>
      </div>
      <div class="key-group">
        {Object.entries(keys)
          .filter(([, station]) => station === id)
          .map(([code]) => (
            <Key key={code} label={say.key(code)} detail={say.forget} onPress={() => forget(code)} />
          ))}
        {learning === id ? (
          <Key label={say.pressNow} detail={say.cancel} tone="act" onPress={() => setLearning(null)} />
        ) : (
          <Key label={say.learn} name={`${name}: ${say.learn}`} onPress={() => setLearning(id)} />
        )}
      </div>
    </div>
  )
  return (
    <Field title={say.pedals} hint={say.pedalsHint}>
      {stations.map(({ id, name, acts }) => row(id, name, say.acts(acts)))}
      {inUse(shop?.kitchenStations ?? NO_STATIONS).map(({ id, name }) => row(kitchenPedal(id), name, ''))}
      {row(COMING_KEY, say.coming, say.comingHint)}
    </Field>
  )
}
