import type { Browser, Locator, Page } from '@playwright/test'
import { ASK_CODES } from '../../../shared-core/day/answers.ts'
import type { Act } from '../../../shared-core/day/commands.ts'
import { doughId, shelfId, varietyId } from '../../../shared-core/ids.ts'
import type { Language, Shop } from '../../../shared-core/shop/shop.ts'
import { hours, shopWith } from '../../core/support/shop.ts'
import type { ShopServer } from './shop-server.ts'

const MINUTE_MS = 60_000

export interface DeskOn {
  readonly place?: string
  readonly language?: Language
  readonly size?: { readonly width: number; readonly height: number }
  readonly settings?: object
}

/** A desk on a tablet or a phone, used by touch alone. */
export async function openDeskByTouch(browser: Browser, server: ShopServer, on: DeskOn = {}): Promise<Page> {
  const { place = 'today', language, size = { width: 1440, height: 900 }, settings = {} } = on
  const context = await browser.newContext({ viewport: size, hasTouch: true })
  await context.addInitScript(
    (text) => {
      if (localStorage.getItem('boilboard.desk.settings') === null)
        localStorage.setItem('boilboard.desk.settings', text)
    },
    JSON.stringify({ ...settings, ...(language === undefined ? {} : { language }) }),
  )
  const page = await context.newPage()
  await page.goto(`${server.address}/desk#${place}`)
  await page.locator('.desk-place').waitFor()
  return page
}

/** One part of a place, by what it is and not by its words. */
export function part(page: Page, name: string): Locator {
  return page.locator(`[data-part="${name}"], [data-step="${name}"]`)
}

/**
 * A shop in which it is noon now, so that two hours ago is the same day: open from just after midnight to just before it,
 * whatever the clock of the machine that runs the test says.
 */
export function noonShop(parts: Partial<Shop> = {}): Shop {
  const base = shopWith()
  const ahead = 12 - new Date().getUTCHours()
  const zone = ahead === 0 ? 'Etc/GMT' : `Etc/GMT${ahead > 0 ? '-' : '+'}${Math.abs(ahead)}`
  const allDay = { ovenReadyMinute: 1, openMinute: 2, closeMinute: 1_438 }
  return shopWith({
    profile: { ...base.profile, zone },
    hours: hours({ ...allDay, changeoverFromMinute: null, changeoverToMinute: null, secondMenu: null }),
    ...parts,
  })
}

/** An act tapped so many minutes ago, on a screen that had no contact; its questions are answered with yes. */
export async function ago(server: ShopServer, minutes: number, act: Act): Promise<void> {
  const late = { ...act, confirmed: ASK_CODES, tappedAtMs: Date.now() - minutes * MINUTE_MS }
  await server.act(late)
}

/** A load on a shelf, flipped and out, at so many minutes ago each. */
export async function bake(
  server: ShopServer,
  shelf: string,
  variety: string,
  pieces: number,
  at: readonly [number, number, number],
): Promise<void> {
  const lines = [{ varietyId: varietyId(variety), pieces }]
  const [inAgo, flipAgo, outAgo] = at
  await ago(server, inAgo, { type: 'load', shelfId: shelfId(shelf), plannedId: null, lines })
  const load = [...(await server.state()).loads.values()].find(({ shelfId: id }) => id === shelf)
  if (load === undefined) throw new Error(`nothing on ${shelf}`)
  await ago(server, flipAgo, { type: 'flip', loadId: load.id })
  await ago(server, outAgo, { type: 'out', loadId: load.id, from: 'second-side', lines: null })
}

/** Trays on the rack three hours ago; 36 sesame and 24 poppy baked since. */
export async function twoLoads(server: ShopServer): Promise<void> {
  await ago(server, 180, { type: 'openDay' })
  const trays = { doughId: doughId('plain'), varietyId: null, pieces: 90, stage: 'rack', sinceMs: null } as const
  await ago(server, 178, { type: 'carryIn', ...trays })
  await bake(server, 's1', 'sesame', 36, [150, 142, 134])
  await bake(server, 's2', 'poppy', 24, [120, 112, 104])
}
