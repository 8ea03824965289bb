import { varietyId } from '../../../shared-core/ids.ts'
import type { Outlook, VarietyOutlook } from '../../../shared-core/live/outlook.ts'
import { at } from './make.ts'

/** Of one variety: lasts to the close with some left, learnt from many days, with nothing on the way, unless said otherwise. */
export function lookingAt(id: string, parts: Partial<VarietyOutlook> = {}): VarietyOutlook {
  return {
    varietyId: varietyId(id),
    basis: 'many',
    rest: { q10: 10, q50: 16, q90: 24 },
    gone: { t10Ms: null, t50Ms: null, t90Ms: null },
    moreAtMs: null,
    shortAtMs: null,
    beforeMorePercent: null,
    beforeClosePercent: 4,
    leftAtClose: 8,
    lost: 0,
    atChangeover: null,
    ...parts,
  }
}

/** The test shop's outlook: changeover at 11:00, last loads in by 10:38, open until 15:00. */
export function outlookWith(varieties: readonly VarietyOutlook[], parts: Partial<Outlook> = {}): Outlook {
  return {
    date: '2026-11-24',
    atMs: at('8:00'),
    closeAtMs: at('15:00'),
    changeoverAtMs: at('11:00'),
    lastLoadInAtMs: at('10:38'),
    varieties,
    ...parts,
  }
}

/** Gone by these times with 10, 50 and 90 % chance. */
export function goneBy(t10: string | null, t50: string | null, t90: string | null): VarietyOutlook['gone'] {
  const ms = (clock: string | null) => (clock === null ? null : at(clock))
  return { t10Ms: ms(t10), t50Ms: ms(t50), t90Ms: ms(t90) }
}
