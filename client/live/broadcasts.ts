import type { OutlookTold, PlanTold, ToScreen, Welcome } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { LiveState } from './shop-store.ts'

/** Values that the server sends beside the fold: only the latest of each counts. */
export type Told = Pick<LiveState, 'shopClock' | 'coming' | 'screens' | 'demo' | 'version' | 'outlook' | 'plan'>
type Broadcast = Extract<ToScreen, { type: 'coming' | 'clockTable' | 'screens' | 'outlook' | 'plan' }>

/** How long the sound of an act rests when somebody says "coming"; the server's own word replaces this guess. */
const COMING_MS = 45_000

export class Broadcasts {
  #told: Told = { shopClock: null, coming: new Map(), screens: [], demo: null, version: '', outlook: null, plan: null }
  /** Which course of which journal advice is of, and of which entry. */
  #course = ''
  #outlookSeq = 0
  #planSeq = 0

  /** Replaced whole at every change. */
  get told(): Told {
    return this.#told
  }

  welcome({ clock, demo, version, journalId, course }: Welcome): void {
    this.#told = { ...this.#told, shopClock: clock, demo, version }
    if (`${journalId} ${course}` === this.#course) return
    // Of another history; the server tells this one's right after.
    this.#course = `${journalId} ${course}`
    this.#outlookSeq = 0
    this.#planSeq = 0
    this.#told = { ...this.#told, outlook: null, plan: null }
  }

  hear(message: Broadcast): void {
    if (message.type === 'clockTable') this.#told = { ...this.#told, shopClock: message.clock }
    else if (message.type === 'screens') this.#told = { ...this.#told, screens: message.screens }
    else if (message.type === 'outlook') this.#look(message)
    else if (message.type === 'plan') this.#follow(message)
    else this.#rest(message.actKey, message.untilMs)
  }

  /** One that is of an earlier state than what is shown was overtaken. */
  #look({ basedOnSeq, outlook }: OutlookTold): void {
    if (basedOnSeq < this.#outlookSeq) return
    this.#outlookSeq = basedOnSeq
    this.#told = { ...this.#told, outlook }
  }

  #follow({ basedOnSeq, plan }: PlanTold): void {
    if (basedOnSeq < this.#planSeq) return
    this.#planSeq = basedOnSeq
    this.#told = { ...this.#told, plan }
  }

  /** Somebody here said "coming". */
  guessRest(actKey: string, nowMs: EpochMs): void {
    this.#rest(actKey, epochMs(nowMs + COMING_MS))
  }

  /** The sound of an act rests until then. */
  #rest(actKey: string, untilMs: EpochMs): void {
    this.#told = { ...this.#told, coming: new Map([...this.#told.coming, [actKey, untilMs]]) }
  }

  /** Forgets the rests that are over. @returns whether there were any */
  endRests(nowMs: EpochMs): boolean {
    const coming = [...this.#told.coming].filter(([, untilMs]) => untilMs > nowMs)
    if (coming.length === this.#told.coming.size) return false
    this.#told = { ...this.#told, coming: new Map(coming) }
    return true
  }
}
