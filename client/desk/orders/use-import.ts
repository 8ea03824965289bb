import { useRef, useState } from 'preact/hooks'
import type { OrderMapping, OrdersRead } from '../../../shared-core/live/orders-import.ts'
import type { DeskOrderWords } from '../../words/desk-orders.ts'
import { sendOrders } from './import-view.ts'

const NOTHING_TOLD = { text: '', isTrouble: false }

/** A file of orders in this browser, and how the shop's server reads it. An answer that was overtaken is dropped. */
export function useImport(say: DeskOrderWords) {
  const [file, setFile] = useState<File | null>(null)
  const [read, setRead] = useState<OrdersRead | null>(null)
  const [mapping, setMapping] = useState<OrderMapping | null>(null)
  const [told, setTold] = useState({ text: '', isTrouble: false })
  const [isBusy, setBusy] = useState(false)
  const asked = useRef(0)
  const send = async (one: File, as: OrderMapping | null, takes: boolean) => {
    const mine = ++asked.current
    setBusy(true)
    const done = await sendOrders(one, as, takes)
    // Another change has been asked for meanwhile.
    if (mine !== asked.current) return
    setBusy(false)
    if (done.kind !== 'done') {
      const why = done.kind === 'no-contact' ? say.noContact : `${say.files.failed} ${done.detail}`.trim()
      return setTold({ text: why, isTrouble: true })
    }
    setRead(done.value)
    setMapping(done.value.mapping)
    const taken = done.value.orders.filter(({ state }) => state === 'taken').length
    setTold(takes ? { text: say.files.taken(taken), isTrouble: false } : NOTHING_TOLD)
  }
  const choose = (one: File) => {
    setFile(one)
    setRead(null)
    setMapping(null)
    void send(one, null, false)
  }
  const change = (next: OrderMapping) => {
    setMapping(next)
    if (file !== null) void send(file, next, false)
  }
  const putAway = () => {
    asked.current += 1
    setFile(null)
    setRead(null)
    setTold(NOTHING_TOLD)
    setBusy(false)
  }
  const take = () => {
    if (file !== null) void send(file, mapping, true)
  }
  return { file, read, mapping, told, isBusy, choose, change, take, putAway }
}
