import { setImmediate as nextTurn, setTimeout as wait } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import type { Express } from 'express'
import type { State } from '../shared-core/day/state.ts'
import { FOLD_VERSION } from '../shared-core/day/state.ts'
import type { Plan } from '../shared-core/live/plan.ts'
import type { Welcome } from '../shared-core/live/protocol.ts'
import type { EpochMs } from '../shared-core/units.ts'
import type { Copies } from './copies/copies.ts'
import { NO_COPIES } from './copies/copies.ts'
import type { Door } from './devices/door.ts'
import { asTyped } from './devices/join-codes.ts'
import type { Closed } from './devices/open-door.ts'
import { openDoor } from './devices/open-door.ts'
import { History } from './history/history.ts'
import type { ApiParts } from './http/api.ts'
import { api } from './http/api.ts'
import { makeApp } from './http/app.ts'
import type { Front } from './http/front.ts'
import { pages } from './http/pages.ts'
import type { Journal } from './journal/journal.ts'
import type { Sqlite } from './journal/sqlite.ts'
import { loadSqlite } from './journal/sqlite.ts'
import type { ServerAddress } from './lan/addresses.ts'
import type { MulticastSocket } from './lan/lan-name.ts'
import { addressesNow, lanNameFor } from './lan/serving-addresses.ts'
import { Chores } from './live/chores.ts'
import { ClockDesk } from './live/clock-desk.ts'
import { fastClock } from './live/fast-clock.ts'
import { Room } from './live/room.ts'
import type { Log } from './live/room-parts.ts'
import { SocketServer } from './live/socket-server.ts'
import { steadyClock } from './live/steady-clock.ts'
import type { CertificateSource } from './operation/certificate-keeper.ts'
import { watchHealth } from './operation/health-watch.ts'
import type { ServerLogger } from './operation/log.ts'
import { logInFolder } from './operation/log.ts'
import { openFront } from './operation/open-front.ts'
import type { Options } from './options.ts'
import { DetailsBook } from './orders/details-book.ts'
import { DetailsChores } from './orders/details-chores.ts'
import { ImportDesk } from './sales/import-desk.ts'
import { FULL_FOLD_TOLD_ENTRIES, wake } from './shop/wake.ts'
import type { Advice } from './work/advice.ts'
import { adviceFor } from './work/advice.ts'
import type { WorkDesk } from './work/work-desk.ts'

declare const __BUILD_ID__: string

const VERSION = '0.1.0'
const CLIENT_FOLDER = fileURLToPath(new URL('./client/', import.meta.url))
const CHORES_EVERY_MS = 1_000
/** Taps already on the wire get their answer before the links are closed. */
const LAST_WORDS_MS = 50

export interface Serving {
  readonly door: Door
  readonly room: Room
  readonly imports: ImportDesk
  /** Whom orders are for. */
  readonly details: DetailsBook
  readonly journal: Journal
  readonly port: number
  readonly now: () => EpochMs
  /** Which loads are advised; null: none are. */
  readonly plan: () => Plan | null
  readonly addresses: () => readonly ServerAddress[]
  /** Stops taking, writes a snapshot, closes the links and the port. */
  stop(): Promise<void>
}

export interface ServeParts {
  readonly journal: Journal
  /** Null: the shop is open to everybody on the network. */
  readonly closed: Omit<Closed, 'tellTerminal'> | null
  /** Where past days are kept, made again from the journal when it is gone; ":memory:" for nowhere. */
  readonly historyFile: string
  /** Where it is kept whom orders are for; left out: gone with the server. */
  readonly detailsFile?: string
  /** The shop's folder, whose disk is watched; left out: there is none. */
  readonly folder?: string
  /** Left out: plain http. */
  readonly certificate?: CertificateSource
  /** Left out: warnings at the terminal only. */
  readonly log?: ServerLogger
  /** Left out: none are kept. */
  readonly copies?: Copies
  /** Where advice is reckoned; left out: in this very thread, as tests do. It is closed with the server. */
  readonly work?: WorkDesk
  readonly options: Pick<Options, 'port' | 'bind' | 'names'>
  readonly demo: Welcome['demo']
  readonly say: (line: string) => void
  /** Left out: no name is announced on the network. */
  readonly openMulticast?: () => MulticastSocket
}

/** Opens a journal to the shop's network: listens at once, folds, then lets the screens in. */
export async function serve(parts: ServeParts): Promise<Serving> {
  const { journal, historyFile, options, demo, say, copies } = parts
  const log = parts.log ?? (await logInFolder(null)).log
  const { bind, names } = options
  const opened = await openFront({ certificate: parts.certificate, bind, names, log })
  const { front, scheme } = opened
  const port = await front.listen(options.port, options.bind)
  const state = await wakeAloud(journal, front, say)
  const steadyMs = machineClock(state.recordedAtMs)
  const now = fastClock(steadyMs, demo?.speed ?? 1)
  const clock = new ClockDesk(state, now)
  const sqlite = await loadSqlite()
  const history = new History({ journal, sqlite, file: historyFile, breathe: () => nextTurn() })
  const door = doorFor(parts, sqlite, now)
  const sockets = new SocketServer(front.http, { names: options.names, door, log })
  const advice = adviceFor({ work: parts.work, state, history, now, log, tellAll: (told) => room.sendAll(told) })
  const details = new DetailsBook(sqlite, parts.detailsFile ?? ':memory:')
  const room = makeRoom({ parts, state, now, sockets, clock, log, door, advice, details })
  const imports = new ImportDesk({ work: advice.work, room, log })
  const others = [opened.reasons, () => copies?.reasons() ?? [], advice.reasons]
  const health = watchHealth({ folder: parts.folder, room, history, log, steadyMs, others })
  const lanName = lanNameFor(parts, { scheme, port })
  const addresses = () => addressesNow(options, { scheme, port }, lanName)
  const localDate = () => clock.date(now())
  const reasons = () => health.watch.reasons()
  front.handOver(
    appFor(parts, log, { door, room, history, advice, imports, details, addresses, localDate, now, health: reasons }),
  )
  sockets.open(room)
  const forgetting = new DetailsChores({ details, state, now, localDate: (atMs) => clock.date(atMs), log })
  const inLull = () => [copies?.lull(localDate()), forgetting.tick()]
  const chores = choresFor({ room, journal, now, history, log, inLull })
  lanName?.follow(state.shop?.profile.name ?? null)
  const timer = setInterval(() => {
    lanName?.follow(state.shop?.profile.name ?? null)
    if (clock.isNew()) room.sendAll({ type: 'clockTable', clock: clock.table() })
    health.watch.tick()
    tickDoor(door, sockets, log)
    opened.tick(lanName?.name ?? null)
    copies?.tick()
    advice.tick()
    imports.tick()
    chores.tick().catch((error: unknown) => log.error({ error }, 'a chore failed'))
  }, CHORES_EVERY_MS)
  const ends = [
    () => sockets.close(),
    () => chores.snapshot(),
    () => imports.close(),
    () => advice.close(),
    () => history.close(),
    () => details.close(),
    () => door.close(),
    () => copies?.stop(),
    () => journal.close(),
  ]
  const stop = async () => {
    clearInterval(timer)
    health.stop()
    lanName?.stop()
    await stopped(room, log, ends)
  }
  log.info({ version: VERSION, build: __BUILD_ID__, node: process.version, port, seq: state.seq }, 'serving')
  return { door, room, imports, details, journal, port, now, plan: () => advice.plan()?.plan ?? null, addresses, stop }
}

/** What was being taken is answered first. */
async function stopped(room: Room, log: ServerLogger, ends: readonly (() => unknown)[]): Promise<void> {
  await room.read(() => undefined)
  await wait(LAST_WORDS_MS)
  await inTurn(log, ends)
  log.info({ seq: room.state.seq }, 'stopped')
}

/** One that fails, such as a snapshot on a full disk, keeps none of the others from being done. */
async function inTurn(log: Log, steps: readonly (() => unknown)[]): Promise<void> {
  for (const step of steps) {
    try {
      await step()
    } catch (error) {
      log.error({ error }, 'a part of the stop failed')
    }
  }
}

type AppParts = Omit<ApiParts, 'journal' | 'copies' | 'version' | 'isDemo' | 'work' | 'outlook' | 'plan'> & {
  readonly advice: Advice
}

function appFor(
  { journal, options, demo, copies }: ServeParts,
  log: ServerLogger,
  { advice, ...parts }: AppParts,
): Express {
  return makeApp({ names: options.names, door: parts.door, log }, (app) => {
    const standing = () => copies?.standing() ?? NO_COPIES
    const { work, outlook, plan } = advice
    api(app, { ...parts, work, outlook, plan, journal, copies: standing, version: VERSION, isDemo: demo !== null })
    pages(app, CLIENT_FOLDER)
  })
}

function machineClock(fromMs: EpochMs) {
  return steadyClock(
    fromMs,
    () => Date.now(),
    () => performance.now(),
  )
}

function doorFor({ closed, say }: ServeParts, sqlite: Sqlite, now: () => EpochMs): Door {
  const tellTerminal = (code: string) => say(`To make a browser the shop's desk, type ${asTyped(code)} in it.`)
  return openDoor(sqlite, now, closed && { ...closed, tellTerminal })
}

/** A disk that is full keeps nobody out: when devices were last seen is then not written down. */
function tickDoor(door: Door, sockets: SocketServer, log: Log): void {
  try {
    door.tick(sockets.linked())
  } catch (error) {
    log.error({ error }, 'when devices were last seen could not be written')
  }
}

interface MakeRoom {
  readonly parts: ServeParts
  readonly state: State
  readonly now: () => EpochMs
  readonly sockets: SocketServer
  readonly clock: ClockDesk
  readonly log: Log
  readonly door: Door
  readonly advice: Advice
  readonly details: DetailsBook
}

function makeRoom(made: MakeRoom): Room {
  const { parts, state, now, sockets, clock, log, door, advice, details } = made
  const { journal, demo } = parts
  return new Room({
    journal,
    state,
    now,
    endOfTurn: setImmediate,
    broadcast: (links, message) => sockets.broadcast(links, message),
    localDate: (atMs) => clock.date(atMs),
    clock: () => clock.table(),
    buildId: __BUILD_ID__,
    version: VERSION,
    demo,
    log,
    advice: () => [advice.plan(), advice.outlook()].flatMap((told) => told ?? []),
    onEntries: (entries) => advice.entriesCame(entries),
    details,
    onNotYourRole: ({ name }) => door.refused.count('not-its-role', name),
  })
}

interface ChoresFor {
  readonly room: Room
  readonly journal: Journal
  readonly now: () => EpochMs
  readonly history: History
  readonly log: Log
  readonly inLull: () => unknown
}

function choresFor({ room, journal, now, history, log, inLull: others }: ChoresFor): Chores {
  // After a fold of everything there is none that is good: the first lull writes one.
  const snapshotSeq = journal.newestSnapshot(FOLD_VERSION)?.seq ?? 0
  const inLull = () => {
    others()
    history.catchUp().catch((error: unknown) => log.error({ error }, 'the days could not be made'))
  }
  return new Chores({ room, journal, now, snapshotSeq, inLull })
}

async function wakeAloud(journal: Journal, front: Front, say: (line: string) => void): Promise<State> {
  let told = -1
  return await wake(journal, (share) => {
    front.progress(share)
    const tenth = Math.floor(share * 10)
    if (tenth === told || journal.lastSeq() < FULL_FOLD_TOLD_ENTRIES) return
    told = tenth
    say(`Reading the journal, ${tenth * 10} % done.`)
  })
}
