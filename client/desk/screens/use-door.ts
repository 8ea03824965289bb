import { useState } from 'preact/hooks'
import type { WhoIsIn } from '../../../shared-core/live/devices.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { DeskDoorWords } from '../../words/desk-door.ts'
import type { Done } from '../call.ts'
import { call } from '../call.ts'
import { useGot } from '../use-got.ts'

const DEVICES = '/api/v1/devices'
/** Somebody stands there with the new tablet in the hand. */
const WAITING_EVERY_MS = 2_000
const EVERY_MS = 5_000

export interface Door extends WhoIsIn {
  readonly isKnown: boolean
  /** Of what was asked last, in words; "" when it worked. */
  readonly trouble: string
  /** @returns what it brought; null when it did not work, which `trouble` then says */
  readonly ask: <Value>(method: 'POST' | 'PATCH' | 'DELETE', within: string, body?: object) => Promise<Value | null>
}

/** Who may come in, looked at anew now and then and after each change. */
export function useDoor(nowMs: EpochMs, linkedScreens: number, say: DeskDoorWords): Door {
  const [changes, setChanges] = useState(0)
  const [trouble, setTrouble] = useState('')
  const [isWaiting, setWaiting] = useState(false)
  const beat = Math.floor(nowMs / (isWaiting ? WAITING_EVERY_MS : EVERY_MS))
  const got = useGot<WhoIsIn>(DEVICES, `${changes} ${linkedScreens} ${beat}`)
  const known = got.kind === 'got' ? got.value : NOBODY
  if (isWaiting !== known.codes.length > 0) setWaiting(known.codes.length > 0)
  return {
    ...known,
    isKnown: got.kind === 'got',
    trouble,
    ask: async <Value>(method: 'POST' | 'PATCH' | 'DELETE', within: string, body?: object) => {
      const done = await call<Value>(method, `${DEVICES}${within}`, body)
      setTrouble(troubleOf(method, done, say))
      setChanges((count) => count + 1)
      return done.kind === 'done' ? done.value : null
    },
  }
}

const NOBODY: WhoIsIn = { devices: [], codes: [], linked: [] }

/** Its own sentences where somebody at the desk can run into it; else the server's, which are for scripts. */
export function troubleOf(method: 'POST' | 'PATCH' | 'DELETE', done: Done<unknown>, say: DeskDoorWords): string {
  if (done.kind === 'done') return ''
  if (done.kind === 'no-contact') return say.noContact
  if (done.status === 404) return say.refusals.gone
  if (done.status === 409) return say.refusals[method === 'POST' ? 'too-many' : 'last-desk']
  return `${say.failed} ${done.detail}`.trim()
}
