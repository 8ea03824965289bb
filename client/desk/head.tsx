import type { Shop } from '../../shared-core/shop/shop.ts'
import type { LiveState, ShopStore } from '../live/shop-store.ts'
import type { DeskWords } from '../words/desk.ts'
import { settingsWords } from '../words/settings.ts'
import { addressOf } from './place.ts'
import { useRefusedMark } from './refused-mark.ts'
import { useWhere } from './use-where.ts'

export interface HeadProps {
  readonly store: ShopStore
  readonly live: LiveState
  readonly shop: Shop | null
  readonly words: DeskWords
}

/** The shop, the time, the link, and the language of this screen. */
export function Head({ store, live, shop, words }: HeadProps) {
  const link = words.live.connection(live.connection)
  const waiting = live.connection.phase === 'live' ? '' : words.live.pending(live.pending.length)
  const demo = words.live.demo(live.demo)
  const refused = useRefusedMark(live.nowMs, useWhere().place)
  return (
    <header class="desk-head">
      <strong class="desk-shop">{shop?.profile.name ?? 'Boilboard'}</strong>
      <span class="desk-clock">{words.times.clock(live.nowMs)}</span>
      {live.shown?.day != null && <span>{words.times.date(live.shown.day.label)}</span>}
      {demo !== '' && <span class="desk-demo">{demo}</span>}
      {refused > 0 && (
        <a class="desk-refused" href={addressOf('screens')}>
          {words.desk.refused(refused)}
        </a>
      )}
      <span class="desk-link" role="status">
        {[link, waiting].filter((text) => text !== '').join(' · ')}
      </span>
      <select
        aria-label={words.desk.language}
        value={live.settings.language ?? 'shop'}
        onChange={(event) => {
          const { value } = event.currentTarget
          store.changeSettings({ language: value === 'en' || value === 'es' ? value : null })
        }}
      >
        <option value="shop">{settingsWords(words).asShop}</option>
        <option value="en">English</option>
        <option value="es">Español</option>
      </select>
    </header>
  )
}
