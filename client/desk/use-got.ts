import { useEffect, useState } from 'preact/hooks'
import type { Got } from './get-json.ts'
import { getJson } from './get-json.ts'

/** A list that the server is still making is asked for again after this. */
const AGAIN_MS = 2_000

/**
 * Something of the shop's API, asked for anew whenever the address or `version` changes; what was there stays meanwhile.
 * @param waitMs so long nothing may change before it is asked: a row of taps asks once
 */
export function useGot<Value>(address: string | null, version: string | number = '', waitMs = 0): Got<Value> {
  const [got, setGot] = useState<{ readonly address: string | null; readonly got: Got<Value> }>(NOTHING)
  const [tries, setTries] = useState(0)
  // biome-ignore lint/correctness/useExhaustiveDependencies: another version is another answer from the same address.
  useEffect(() => {
    if (address === null) return
    let isCurrent = true
    let timer = window.setTimeout(async () => {
      const next = await getJson<Value>(address)
      if (!isCurrent) return
      setGot({ address, got: next })
      if (next.kind === 'not-yet' || next.kind === 'no-contact')
        timer = window.setTimeout(() => setTries(tries + 1), AGAIN_MS)
    }, waitMs)
    return () => {
      isCurrent = false
      window.clearTimeout(timer)
    }
  }, [address, version, waitMs, tries])
  return got.address === address ? got.got : WAITING
}

const WAITING = { kind: 'waiting' } as const
const NOTHING = { address: null, got: WAITING } as const
