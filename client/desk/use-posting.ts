import { useState } from 'preact/hooks'
import type { LiveState, ShopStore } from '../live/shop-store.ts'
import type { Outcome, Posting } from './post.ts'
import { post } from './post.ts'

type Sent = Pick<Posting, 'address' | 'body' | 'type'>

/** Sends a list or file, remembers what became of it, and sends it again when its questions are answered with yes. */
export function usePosting(store: ShopStore, { settings }: LiveState) {
  const [outcome, setOutcome] = useState<Outcome | null>(null)
  const [sent, setSent] = useState<Sent | null>(null)
  const [isBusy, setBusy] = useState(false)
  const send = async (next: Sent, confirm: readonly string[] = []) => {
    setBusy(true)
    setSent(next)
    setOutcome(await post({ ...next, confirm, deviceId: store.deviceId, deviceName: settings.name }))
    setBusy(false)
  }
  return {
    outcome,
    isBusy,
    send,
    /** Something that never reached the server: a mistake that was seen here. */
    show: setOutcome,
    confirm: async (codes: readonly string[]) => {
      if (sent !== null) await send(sent, codes)
    },
    putAway: () => setOutcome(null),
  }
}
