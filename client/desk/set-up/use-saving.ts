import { useEffect, useState } from 'preact/hooks'
import type { CommandId } from '../../../shared-core/ids.ts'
import { derivedId, setUpId } from '../../../shared-core/ids.ts'
import type { Saving, SetUpProps } from './set-up-parts.ts'

type SavingParts = Pick<SetUpProps, 'store' | 'live' | 'state' | 'changes' | 'clear'>

interface Sent {
  readonly id: CommandId
  readonly isPlanned: boolean
}

/**
 * Sends the draft as one command and follows what becomes of it. The draft is thrown away only once the server has
 * taken it: a refusal, or a question that is answered with no, leaves it as it was.
 */
export function useSaving({ store, live, state, changes, clear }: SavingParts): Saving {
  const [sent, setSent] = useState<Sent | null>(null)
  const [status, setStatus] = useState<Saving['status']>('idle')
  const { pending, notices } = live
  useEffect(() => {
    if (sent === null) return
    // The store is asked too: this render may be older than the command.
    if ([...pending, ...store.getState().pending].some(({ command }) => command.id === sent.id)) return
    const notice = notices.find((one) => 'command' in one && one.command.id === sent.id)
    if (notice?.kind === 'ask') return
    const isTaken = sent.isPlanned ? state.setUps.has(setUpId(derivedId(sent.id, 1))) : changes.length === 0
    setSent(null)
    setStatus(notice === undefined && isTaken ? (sent.isPlanned ? 'planned' : 'saved') : 'idle')
    if (notice === undefined && isTaken) clear()
  }, [store, sent, pending, notices, state, changes, clear])
  return {
    status: status !== 'waiting' && changes.length > 0 && sent === null ? 'idle' : status,
    save: (fromMs) => {
      const id = store.send({ type: 'changeSetUp', changes, ...(fromMs === null ? {} : { fromMs }) })
      if (id === null) return
      setSent({ id, isPlanned: fromMs !== null })
      setStatus('waiting')
    },
  }
}
