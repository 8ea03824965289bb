import { useState } from 'preact/hooks'
import type { StationId } from '../../../shared-core/ids.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import { COMING_KEY, kitchenPedal } from '../../parts/calls.ts'
import { Key } from '../../parts/key.tsx'
import { useLearning } from '../../parts/use-learning.ts'
import { ListRows } from '../sheets/list-rows.tsx'
import type { SettingsPart } from './settings-sheet.tsx'

/** Ties pedals and one-key pads, each key of theirs to one station or to "coming". */
export function PedalPart(props: SettingsPart) {
  const { store, live, shop, say, words, room } = props
  const { keys } = live.settings
  const [learning, setLearning] = useState<StationId | null>(null)
  useLearning(learning, (code, station) => {
    store.changeSettings({ keys: { ...keys, [code]: station } })
    setLearning(null)
  })
  const codesOf = (id: StationId) => Object.entries(keys).flatMap(([code, station]) => (station === id ? [code] : []))
  const forget = (id: StationId) =>
    store.changeSettings({ keys: Object.fromEntries(Object.entries(keys).filter(([, station]) => station !== id)) })
  const stations = [...shop.stations.values()].filter((station) => !station.retired && station.acts.length > 0)
  const items = [
    ...stations.map(({ id, name, acts }) => ({
      id,
      title: name,
      texts: [say.acts(acts), ...codesOf(id).map(say.key)],
    })),
    ...inUse(shop.kitchenStations).map(({ id, name }) => {
      const pedal = kitchenPedal(id)
      return { id: pedal, title: name, texts: [words.bench.more.kitchen, ...codesOf(pedal).map(say.key)] }
    }),
    { id: COMING_KEY, title: say.coming, texts: [say.comingHint, ...codesOf(COMING_KEY).map(say.key)] },
  ]
  return (
    <>
      <div class="bench-quiet">{say.pedalsHint}</div>
      <div class="bench-quiet">{words.cautions.aidShort}</div>
      <ListRows
        {...props}
        room={{ ...room, rows: Math.max(2, room.rows - 1), rowPx: room.keyPx }}
        items={items}
        nothing=""
        keysOf={({ id, title }) => (
          <>
            {codesOf(id).length > 0 && (
              <div class="bench-list-key">
                <Key name={`${title}: ${say.forget}`} onPress={() => forget(id)}>
                  <span class="bench-small">{say.forget}</span>
                </Key>
              </div>
            )}
            <div class="bench-list-key">
              <Key
                tone={learning === id ? 'act' : 'plain'}
                name={`${title}: ${learning === id ? say.cancel : say.learn}`}
                onPress={() => setLearning(learning === id ? null : id)}
              >
                <span class="bench-small">{learning === id ? say.pressNow : say.learn}</span>
              </Key>
            </div>
          </>
        )}
      />
    </>
  )
}
