import type { ComponentChildren } from 'preact'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { DEVICE_PAGE } from '../live/device-page.ts'
import { DEVICE_NAME_MAX } from '../live/device-settings.ts'
import type { LiveState, ShopStore } from '../live/shop-store.ts'
import { Choice } from '../parts/choice.tsx'
import { ComfortSettings } from '../parts/comfort-settings.tsx'
import { Key } from '../parts/key.tsx'
import type { Panel } from '../parts/legibility.ts'
import { ScreenSize } from '../parts/screen-size.tsx'
import { useEscape } from '../parts/use-escape.ts'
import { useTyped } from '../parts/use-typed.ts'
import type { SettingsWords } from '../words/settings.ts'
import { settingsWords, versionText } from '../words/settings.ts'
import type { Words } from '../words/words.ts'
import { NoticeKeys } from './notice-keys.tsx'
import { PedalSettings } from './pedal-settings.tsx'
import { QuietSettings } from './quiet-settings.tsx'
import { SizeSettings } from './size-settings.tsx'

export interface SheetProps {
  readonly store: ShopStore
  readonly live: LiveState
  readonly shop: Shop | null
  readonly words: Words
  readonly panel: Panel
  readonly onTrySound: () => void
  readonly onClose: () => void
}

/** The same with what a part of it says. */
export interface SheetPartProps extends SheetProps {
  readonly settingsWords: SettingsWords
}

/** Whoever sets a wall up stands before it, a step away from a large screen. */
const ARM_M = 1
const VOLUMES = [0, 20, 40, 60, 80, 100]

/** The settings of this screen, over the wall: touch the clock, or press `s`. */
export function SettingsSheet(sheet: SheetProps) {
  const say = settingsWords(sheet.words)
  const props = { ...sheet, settingsWords: say }
  const { words, panel, live, onClose } = props
  useEscape(onClose)
  return (
    <div class="wall-sheet">
      <ScreenSize panel={panel} distanceM={ARM_M} theme="light">
        <div class="wall-sheet-page" role="dialog" aria-label={say.title}>
          <header>
            <h1>{say.title}</h1>
            <Key label={say.close} tone="strong" onPress={onClose} />
          </header>
          <NoticeKeys {...props} />
          <Identity {...props} />
          <SizeSettings {...props} />
          <Field title={say.comfort.look}>
            <ComfortSettings
              settings={live.settings}
              words={say.comfort}
              onChange={(change) => props.store.changeSettings(change)}
            />
          </Field>
          <Volume {...props} />
          <QuietSettings {...props} />
          <PedalSettings {...props} />
          <footer>
            <p>{words.cautions.aid}</p>
            <p>
              {versionText(say, live)}
              {live.clockErrorMs !== null && ` · ${words.live.clockError(live.clockErrorMs)}`}
            </p>
            <p>
              <a href={DEVICE_PAGE}>{say.anotherScreen}</a>
            </p>
          </footer>
        </div>
      </ScreenSize>
    </div>
  )
}

export function Field({
  title,
  hint,
  children,
}: {
  title: string
  hint?: string | undefined
  children: ComponentChildren
}) {
  return (
    <section class="wall-field">
      <h2>{title}</h2>
      {children}
      {hint !== undefined && <p>{hint}</p>}
    </section>
  )
}

function Identity({ store, live, shop, settingsWords: say }: SheetPartProps) {
  const { settings } = live
  const typedName = useTyped(settings.name, (text) => store.changeSettings({ name: text }))
  const stations = [...(shop?.stations.values() ?? [])]
    .filter((station) => !station.retired)
    .sort((a, b) => a.order - b.order)
  return (
    <>
      <Field title={say.name} hint={say.nameHint}>
        <input class="wall-input" {...typedName} maxLength={DEVICE_NAME_MAX} aria-label={say.name} />
      </Field>
      <Field title={say.station}>
        <Choice
          name={say.station}
          options={[
            { value: ALL, label: say.allStations },
            ...stations.map(({ id, name, acts }) => ({ value: String(id), label: name, detail: say.acts(acts) })),
          ]}
          chosen={settings.stationId ?? ALL}
          onChoose={(value) =>
            store.changeSettings({ stationId: stations.find((station) => station.id === value)?.id ?? null })
          }
        />
      </Field>
      <Field title={say.language}>
        <Choice
          name={say.language}
          options={[
            { value: 'shop', label: say.asShop },
            { value: 'en', label: 'English' },
            { value: 'es', label: 'Español' },
          ]}
          chosen={settings.language ?? 'shop'}
          onChoose={(value) => store.changeSettings({ language: value === 'shop' ? null : value })}
        />
      </Field>
    </>
  )
}

/** No station has an empty id. */
const ALL = ''

function Volume({ store, live, settingsWords: say, onTrySound }: SheetPartProps) {
  return (
    <Field title={say.volume}>
      <div class="key-group">
        <Choice
          name={say.volume}
          options={VOLUMES.map((percent) => ({ value: String(percent), label: say.percent(percent) }))}
          chosen={String(live.settings.volumePercent)}
          onChoose={(value) => store.changeSettings({ volumePercent: Number(value) })}
        />
        <Key label={say.tryOut} onPress={onTrySound} />
      </div>
    </Field>
  )
}
