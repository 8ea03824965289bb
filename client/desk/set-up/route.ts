import { useEffect, useState } from 'preact/hooks'
import type { GuideStep, SetUpPart } from '../../words/set-up.ts'
import { GROUPS } from './set-up-parts.ts'

/** A page of the set-up, out of the address behind its `#`: links, the back key and a reload lead where they should. */
export type SetUpPlace =
  | { readonly kind: 'overview' }
  | { readonly kind: 'part'; readonly part: SetUpPart }
  | { readonly kind: 'card'; readonly formula: string }
  | { readonly kind: 'guide'; readonly step: GuideStep }

export const GUIDE_STEPS = [
  'shop',
  'oven',
  'kettle',
  'hours',
  'doughs',
  'stations',
  'open',
] as const satisfies readonly GuideStep[]

const PARTS: readonly SetUpPart[] = [...Object.values(GROUPS).flat(), 'save']

/** @returns null for an address that is none of the set-up's */
export function placeOf(hash: string): SetUpPlace | null {
  const [root, first = '', second] = hash.replace(/^#/, '').split('/')
  if (root !== 'set-up') return null
  if (first === 'guide') {
    const step = GUIDE_STEPS.find((one) => one === second)
    return { kind: 'guide', step: step ?? 'shop' }
  }
  if (first === 'card') return { kind: 'card', formula: second ?? '' }
  const part = PARTS.find((one) => one === first)
  return part === undefined ? { kind: 'overview' } : { kind: 'part', part }
}

/** @example hashOf({ kind: 'part', part: 'oven' }) // "#set-up/oven" */
export function hashOf(place: SetUpPlace): string {
  if (place.kind === 'overview') return '#set-up'
  if (place.kind === 'card') return `#set-up/card/${place.formula}`
  return place.kind === 'part' ? `#set-up/${place.part}` : `#set-up/guide/${place.step}`
}

/** What stands behind the `#` of the page's address, anew whenever it changes. */
export function useHash(): string {
  const [hash, setHash] = useState(() => window.location.hash)
  useEffect(() => {
    const hear = () => setHash(window.location.hash)
    window.addEventListener('hashchange', hear)
    return () => window.removeEventListener('hashchange', hear)
  }, [])
  return hash
}

export function go(place: SetUpPlace): void {
  window.location.hash = hashOf(place)
}
