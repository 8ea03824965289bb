import { parseArgs } from 'node:util'
import type { DemoAt } from './demo/demo-at.ts'
import { DEMO_AT } from './demo/demo-at.ts'

export interface Options {
  /** A real shop's folder; null opens the demo. */
  readonly shop: string | null
  /** Everybody on the network may choose a screen, without joining. The demo always is so. */
  readonly isOpen: boolean
  /** All desks are lost: the terminal shows a code for a new one. */
  readonly isDeskLost: boolean
  /** Where copies of the journal go; null: into the shop's folder itself. */
  readonly copies: string | null
  /** Null: plain http. `own`: with a certificate that the server makes for itself. */
  readonly https: 'own' | { readonly cert: string; readonly key: string } | null
  readonly setUp: string | null
  readonly handsOff: boolean
  /** What the demo shows as it opens. */
  readonly at: DemoAt
  /** How many times as fast as real time the demo's runs. */
  readonly speed: number
  /** Whether the server answers to a name of its own on the network. */
  readonly hasName: boolean
  /** Names of this server on the network, besides its addresses. */
  readonly names: readonly string[]
  readonly port: number
  readonly bind: string
}

const PORT_DEFAULT = 4610
const USAGE = `npm start                            the demo shop
npm start -- --hands-off             the demo shop, nobody but you taps
npm start -- --speed 10              the demo shop, ten times as fast (1 to 60)
npm start -- --at afternoon          the demo shop after the changeover; --at changeover during it
npm start -- --shop FOLDER           opens a shop, or makes one in a new folder
npm start -- --shop FOLDER --setup FILE.json
npm start -- --copies FOLDER         keeps copies of the shop's journal there: another drive is best
npm start -- --open                  everybody on the network may choose a screen; for trying things out
npm start -- --shop FOLDER --new-desk   shows a code for a new desk, where all are lost
npm start -- --host NAME             also answers to this name (may be given more than once)
npm start -- --https                 speaks https, with a certificate of its own making
npm start -- --cert FILE --key FILE  speaks https, with this certificate (PEM)
npm start -- --no-name               does not announce a .local name on the network
PORT=8080 npm start                  another port than ${PORT_DEFAULT}`

export type OptionsRead =
  | { readonly ok: true; readonly options: Options }
  | { readonly ok: false; readonly why: string }

/** The command line and environment as options, or a sentence that says what is wrong and how it would be right. */
export function readOptions(args: readonly string[], env: NodeJS.ProcessEnv): OptionsRead {
  const port = portOf(env.PORT)
  if (port === null) return { ok: false, why: `PORT is "${env.PORT}"; it must be a number from 0 to 65535.` }
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        shop: { type: 'string' },
        setup: { type: 'string' },
        copies: { type: 'string' },
        open: { type: 'boolean' },
        'new-desk': { type: 'boolean' },
        https: { type: 'boolean' },
        cert: { type: 'string' },
        key: { type: 'string' },
        'hands-off': { type: 'boolean' },
        speed: { type: 'string' },
        at: { type: 'string' },
        'no-name': { type: 'boolean' },
        host: { type: 'string', multiple: true },
      },
    })
    const { shop = null, setup = null, host = [] } = values
    const at = DEMO_AT.find((one) => one === (values.at ?? 'morning'))
    if (at === undefined) return { ok: false, why: `--at is "${values.at}"; it must be one of ${DEMO_AT.join(', ')}.` }
    if (values.at !== undefined && shop !== null)
      return { ok: false, why: '--at is for the demo: in a real shop it is as late as it is.' }
    const speed = speedOf(values.speed)
    if (speed === null) {
      const why = `--speed is "${values.speed}"; it must be a whole number from 1 to ${SPEED_MAX}, e.g. --speed 10.`
      return { ok: false, why }
    }
    if (speed !== 1 && shop !== null) return { ok: false, why: '--speed is for the demo: a real shop keeps real time.' }
    if (values.copies !== undefined && shop === null)
      return { ok: false, why: '--copies needs --shop FOLDER: the demo is made anew each time.' }
    const isDeskLost = values['new-desk'] ?? false
    if (isDeskLost && (shop === null || values.open === true))
      return { ok: false, why: '--new-desk needs --shop FOLDER, and no --open: an open shop has no desk to lose.' }
    if (setup !== null && shop === null)
      return { ok: false, why: '--setup needs --shop FOLDER: the demo has a set-up of its own.' }
    const https = httpsOf(values)
    if (https === 'half') return { ok: false, why: '--cert FILE and --key FILE belong together: give both.' }
    const names = [...host, ...(env.BOILBOARD_HOSTS ?? '').split(',')].map((name) => name.trim().toLowerCase())
    return {
      ok: true,
      options: {
        shop,
        isOpen: shop === null || (values.open ?? false),
        isDeskLost,
        copies: values.copies ?? null,
        https,
        setUp: setup,
        handsOff: values['hands-off'] ?? false,
        at,
        speed,
        hasName: !(values['no-name'] ?? false),
        names: names.filter((name) => name !== ''),
        port,
        bind: env.BIND ?? '0.0.0.0',
      },
    }
  } catch (error) {
    return { ok: false, why: `${error instanceof Error ? error.message : String(error)}\n\n${USAGE}` }
  }
}

function httpsOf({ https, cert, key }: { https?: boolean; cert?: string; key?: string }) {
  if (cert !== undefined && key !== undefined) return { cert, key }
  if (cert !== undefined || key !== undefined) return 'half'
  return https === true ? 'own' : null
}

/** An hour in a minute: faster, nobody could tap what is called for. */
const SPEED_MAX = 60

function speedOf(text: string | undefined): number | null {
  if (text === undefined) return 1
  return /^[1-9]\d?$/.test(text) && Number(text) <= SPEED_MAX ? Number(text) : null
}

function portOf(text: string | undefined): number | null {
  if (text === undefined || text === '') return PORT_DEFAULT
  return /^\d{1,5}$/.test(text) && Number(text) <= 65_535 ? Number(text) : null
}
