import type { Act } from '../../shared-core/day/commands.ts'
import type { Context } from '../../shared-core/day/decision.ts'
import type { State } from '../../shared-core/day/state.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import type { CommandId, DeviceId } from '../../shared-core/ids.ts'
import type { ToScreen, Welcome } from '../../shared-core/live/protocol.ts'
import { PROTOCOL_VERSION } from '../../shared-core/live/protocol.ts'
import { AdvisedState } from './advised-state.ts'
import type { Trouble } from './anew.ts'
import { Anew } from './anew.ts'
import { Broadcasts } from './broadcasts.ts'
import { Confirmed } from './confirmed.ts'
import { Contact } from './contact.ts'
import { hello } from './hello.ts'
import { Knocking } from './knocking.ts'
import type { Link } from './link.ts'
import { Probing } from './probing.ts'
import { ReloadPolicy } from './reload-policy.ts'
import { Renames } from './renames.ts'
import { contextAt } from './screen-context.ts'
import { ServerClock } from './server-clock.ts'
import { standsStill } from './stands-still.ts'
import type { SyncParts, SyncView } from './sync-parts.ts'
import { Taps } from './taps.ts'
import { ViewState } from './view-state.ts'

type RefusedHello = Extract<ToScreen, { type: 'refusedHello' }>

/**
 * One screen's side of the live connection, without page, socket or timers: those come in as parts, so that simulated
 * days can run it in virtual time. Every trouble has the same cure – say hello again: missed entries, a lost answer and
 * a state that turned out wrong are all mended by the next welcome, after which what is pending goes out once more.
 */
export class ScreenSync {
  readonly serverClock: ServerClock
  readonly #parts: SyncParts
  readonly #taps: Taps
  readonly #reloads: ReloadPolicy
  readonly #renames: Renames
  readonly #knocking: Knocking
  readonly #confirmed = new Confirmed()
  readonly #views: ViewState
  readonly #advised = new AdvisedState()
  readonly #broadcasts = new Broadcasts()
  readonly #probing = new Probing()
  readonly #anew = new Anew()
  readonly #contact: Contact
  readonly #link: Link
  #wantsSnapshot = false
  #touchedMs: number

  constructor(parts: SyncParts) {
    const { saved, makeId, clock, device, openLink, decide } = parts
    const { role } = device()
    this.#parts = parts
    this.#views = new ViewState(decide)
    this.serverClock = new ServerClock(clock)
    this.#taps = new Taps({ saved, role, clock: this.serverClock, makeId })
    this.#reloads = new ReloadPolicy(saved, role)
    this.#renames = new Renames(saved, role)
    this.#knocking = new Knocking(this.#taps.deviceId)
    this.#contact = new Contact(clock, this.serverClock)
    this.#touchedMs = clock.monotonicMs()
    this.#link = openLink({
      up: () => this.#then(() => this.#greet()),
      down: () => this.#then(() => this.#contactLost()),
      message: (message) => this.#then(() => this.#hear(message)),
    })
  }

  view(): SyncView {
    const view = this.#views.of(this.#confirmed, this.#taps.pending, () => this.#context())
    return {
      ...this.#broadcasts.told,
      ...this.#advised.of(view, this.#broadcasts.told.plan),
      connection: this.#contact.connection,
      notices: this.#taps.notices,
      isOutdated: this.#reloads.awaitsBuild,
    }
  }

  /** The confirmed state alone, for comparing screens. It is changed in place: read it, do not keep it. */
  get confirmed(): State | null {
    return this.#confirmed.state
  }

  get deviceId(): DeviceId {
    return this.#taps.deviceId
  }

  /** See `ShopStore.send`. */
  send(act: Act): CommandId | null {
    if (this.#confirmed.state === null) return null
    const id = this.#taps.add(act, this.#confirmed.seen)
    this.#then(() => this.#flush())
    return id
  }

  confirm(noticeId: string): void {
    this.#then(() => {
      this.#taps.confirm(noticeId)
      this.#flush()
    })
  }

  dismiss(noticeId: string): void {
    this.#then(() => this.#taps.dismiss(noticeId))
  }

  sayComing(actKey: string): void {
    this.#then(() => this.#broadcasts.guessRest(actKey, this.serverClock.serverNowMs()))
    if (this.#contact.phase === 'live') this.#link.send({ type: 'coming', actKey })
  }

  touched(): void {
    this.#touchedMs = this.#parts.clock.monotonicMs()
  }

  /** The device's name or station changed: the server hears of it in a new hello. */
  deviceChanged(): void {
    this.#renames.changed()
    if (this.#contact.phase === 'live') this.#then(() => this.#greet())
  }

  /** The page became visible: it may have slept in a way that its clocks do not show. */
  woke(): void {
    this.#probing.begin()
    this.#knocking.looked(this.#parts.clock.monotonicMs())
    this.tick()
  }

  /** To be called about once a second, also while the page is hidden. */
  tick(): void {
    const nowMs = this.#parts.clock.monotonicMs()
    if (this.serverClock.noticeGap()) this.#probing.begin()
    if (this.#knocking.isDue(nowMs) || this.#contact.isOverdue()) this.#link.restart()
    if (this.#anew.isDue(nowMs)) this.#then(() => this.#greet())
    this.#probe()
    if (this.#broadcasts.endRests(this.serverClock.serverNowMs())) this.#parts.onChange()
    const times = { wallMs: this.#parts.clock.wallMs(), idleMs: nowMs - this.#touchedMs }
    if (this.#reloads.isDue({ ...times, ...this.#taps.waiting })) this.#parts.reload()
  }

  close(): void {
    this.#link.close()
  }

  #then<Result>(change: () => Result): Result {
    const result = change()
    this.#parts.onChange()
    return result
  }

  #greet(): void {
    this.#taps.outbox.contactLost()
    this.#anew.forget()
    if (this.#contact.phase !== 'outside')
      this.#contact.enter(this.#confirmed.state === null ? 'connecting' : 'catching-up')
    this.#contact.expectAnswer()
    const { buildId, device } = this.#parts
    const who = { deviceId: this.#taps.deviceId, device: device(), isRenamed: this.#renames.forHello() }
    this.#link.send(hello({ buildId, ...who, confirmed: this.#confirmed, wantsSnapshot: this.#wantsSnapshot }))
  }

  #contactLost(): void {
    this.#taps.outbox.contactLost()
    this.#contact.expectNothing()
    this.#anew.forget()
    this.#reloads.contactLost()
    if (!standsStill(this.#contact.connection))
      this.#contact.enter(this.#confirmed.state === null ? 'connecting' : 'away')
  }

  #hear(message: ToScreen): void {
    const isLive = this.#contact.phase === 'live'
    if (message.type === 'welcome') this.#welcomed(message)
    else if (message.type === 'probed') this.#probed(message)
    else if (message.type === 'refusedHello') this.#refused(message)
    // What was sent before the hello was heard comes again with the welcome.
    else if (message.type === 'turn') isLive && this.#turn(message)
    else if (message.type === 'check') isLive && this.#compare(message)
    else this.#broadcasts.hear(message)
  }

  #welcomed(welcome: Welcome): void {
    const { protocol, foldVersion, buildId } = welcome
    this.#contact.expectNothing()
    this.#knocking.letIn()
    this.#broadcasts.welcome(welcome)
    this.serverClock.runsAt(welcome.demo?.speed ?? 1)
    if (protocol !== PROTOCOL_VERSION || foldVersion !== FOLD_VERSION) {
      this.#standStill(`${buildId} ${protocol} ${foldVersion}`)
      return
    }
    this.#reloads.wish(buildId === this.#parts.buildId ? null : { kind: 'build', target: buildId })
    const trouble = this.#takeIn(welcome)
    const isNameKnown = this.#renames.welcomed()
    if (isNameKnown && welcome.device !== null) this.#parts.named(welcome.device)
    if (trouble !== null) this.#mend(trouble)
    else if (isNameKnown) this.#goLive()
    else this.#greet()
  }

  /** @returns why this state cannot be gone on from; null when it is the server's */
  #takeIn(welcome: Welcome): Trouble | null {
    const { journalId, seq, state, entries } = welcome
    const known = this.#confirmed
    const isBehind = known.isOf(welcome) && known.state !== null && known.state.seq > seq
    if (isBehind && state === null) return 'server-behind'
    const folded = known.welcome(welcome)
    this.#taps.open(journalId)
    // History that is too short to catch up with means the state whole, never a guess.
    if (folded === 'gap') this.#wantsSnapshot = true
    if (folded !== 'done') return folded
    this.#wantsSnapshot = false
    if (known.state !== null) this.#taps.happened(entries, known.state)
    return null
  }

  #goLive(): void {
    this.#contact.enter('live')
    this.#probing.begin()
    this.#probe()
    this.#flush()
  }

  #turn({ entries, answers }: Extract<ToScreen, { type: 'turn' }>): void {
    const folded = this.#confirmed.fold(entries)
    if (folded !== 'done') {
      this.#mend(folded)
      return
    }
    const { state } = this.#confirmed
    if (state !== null && entries.length > 0) this.#taps.happened(entries, state)
    for (const answer of answers) this.#taps.answered(answer)
    if (!this.#taps.outbox.isWaiting) this.#contact.expectNothing()
    this.#flush()
  }

  /** The server's fingerprint of the state; it says nothing when it is of another moment. */
  #compare({ seq, hash }: Extract<ToScreen, { type: 'check' }>): void {
    if (this.#confirmed.agrees(seq, hash) === false) this.#mend('hash')
  }

  #probed({ t0, t1, t2 }: Extract<ToScreen, { type: 'probed' }>): void {
    const t3 = this.#parts.clock.monotonicMs()
    if (this.serverClock.noticeGap()) this.#probing.begin()
    if (!this.#probing.isAnswer(t0)) return
    this.serverClock.heard({ t0, t1, t2, t3 })
    if (this.#probing.hasMore(t3)) this.#link.send({ type: 'probe', t0: t3 })
  }

  #probe(): void {
    const nowMs = this.#parts.clock.monotonicMs()
    if (this.#contact.phase === 'live' && this.#probing.isDue(nowMs)) this.#link.send({ type: 'probe', t0: nowMs })
  }

  #flush(): void {
    if (this.#contact.phase !== 'live') return
    const commands = this.#taps.outbox.next()
    if (commands === null) return
    this.#contact.expectAnswer()
    this.#link.send({ type: 'commands', commands })
  }

  /** What is here cannot be gone on from: a gap is filled, anything worse is replaced by the server's state whole. */
  #mend(reason: Trouble): void {
    if (reason !== 'gap') {
      this.#wantsSnapshot = true
      this.#taps.notice({ id: 'fetched-anew', kind: 'fetched-anew', seq: this.#confirmed.state?.seq ?? 0, reason })
    }
    this.#contact.enter('catching-up')
    if (this.#anew.want(this.#parts.clock.monotonicMs())) this.#greet()
  }

  /** The server and this page do not understand each other: folding on would be guessing, a fresh page is the cure. */
  #standStill(target: string): void {
    this.#contact.enter('stale')
    this.#reloads.wish({ kind: 'form', target })
  }

  /** Not let in: what was tapped stays here, and the link rests until it is time to ask again. */
  #refused(refusal: RefusedHello): void {
    if (refusal.reason === 'malformed' || refusal.reason === 'flooding') {
      this.#standStill(`hello ${refusal.reason}`)
      return
    }
    this.#knocking.turnedAway(this.#parts.clock.monotonicMs())
    this.#contact.turnAway(refusal.reason)
    this.#link.rest()
    if (refusal.reason !== 'moved') return
    this.#taps.leaveFor(refusal.role)
    this.#parts.moveTo(refusal.role)
  }

  #context(): Context {
    const { shopClock } = this.#broadcasts.told
    return contextAt(this.serverClock.serverNowMs(), this.#taps.deviceId, shopClock)
  }
}
