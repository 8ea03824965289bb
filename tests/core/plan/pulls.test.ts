import { describe, expect, it } from 'vitest'
import { doughId } from '../../../shared-core/ids.ts'
import type { DoughLot } from '../../../shared-core/plan/line-dough.ts'
import { pullsOf } from '../../../shared-core/plan/pulls.ts'
import { at, lines } from '../support/make.ts'
import { planLoad } from '../support/plan.ts'
import { asking, eveningLine } from './plan-day-support.ts'

/** Trays of 15; plain stands 20 to 90 minutes on the rack, best 40; rye is boiled cold. */
const lot = (dough: string, pieces: number, parts: Partial<DoughLot> = {}): DoughLot => ({
  doughId: doughId(dough),
  varietyId: null,
  pieces,
  stage: 'chill',
  boilFromMs: at('4:00'),
  latestAtMs: null,
  ...parts,
})
const LINE = { nowMs: at('4:00'), isOpen: true }
const asked = (...doughs: DoughLot[]) => asking({ line: eveningLine({ ...LINE, doughs }) })

describe('trays out of the cooler', () => {
  it('[I37] stand on the rack for their target before the dip, in whole trays; what is left of one goes into the next load', () => {
    const loads = [
      planLoad('6:10', 1, { kettleAtMs: at('6:07'), lines: lines('sesame', 24) }),
      planLoad('6:30', 2, { kettleAtMs: at('6:27'), lines: lines('poppy', 18) }),
    ]
    const pulls = pullsOf(asked(lot('plain', 90)), loads)
    expect(pulls.map(({ atMs, trays, pieces, loadId }) => [atMs, trays, pieces, loadId])).toEqual([
      [at('5:27'), 2, 30, loads[0]?.id],
      [at('5:47'), 1, 15, loads[1]?.id],
    ])
  })

  it('[I37] what stands on the rack goes first; with enough of it nothing is pulled', () => {
    const loads = [planLoad('6:10', 1, { kettleAtMs: at('6:07'), lines: lines('sesame', 24) })]
    expect(pullsOf(asked(lot('plain', 90), lot('plain', 24, { stage: 'rack' })), loads)).toEqual([])
    const some = pullsOf(asked(lot('plain', 90), lot('plain', 12, { stage: 'rack' })), loads)
    expect(some.map(({ trays }) => trays)).toEqual([1])
  })

  it('[I37] what was pulled too long ago for a later load is not counted on', () => {
    const loads = [
      planLoad('6:10', 1, { kettleAtMs: at('6:07'), lines: lines('sesame', 6) }),
      planLoad('8:30', 2, { kettleAtMs: at('8:27'), lines: lines('sesame', 6) }),
    ]
    expect(pullsOf(asked(lot('plain', 90)), loads).map(({ trays }) => trays)).toEqual([1, 1])
  })

  it('[I37] dough that is boiled cold comes out at its dip', () => {
    const loads = [planLoad('6:10', 1, { kettleAtMs: at('6:07'), lines: lines('rye', 12) })]
    expect(pullsOf(asked(lot('rye', 60)), loads)[0]).toMatchObject({ atMs: at('6:07'), doughId: 'rye', trays: 1 })
  })

  it('[I37] the oldest window first, and its end is said; no more than is there, and not before now', () => {
    const loads = [planLoad('4:20', 1, { kettleAtMs: at('4:17'), lines: lines('sesame', 24) })]
    const old = lot('plain', 15, { latestAtMs: at('5:00') })
    const [pull] = pullsOf(asked(old, lot('plain', 6, { latestAtMs: at('20:00') })), loads)
    expect(pull).toMatchObject({ atMs: at('4:00'), pieces: 21, trays: 2, latestAtMs: at('5:00') })
  })

  it('[I37] what should have been pulled by now keeps the time that it had, however often it is looked at', () => {
    const loads = [planLoad('4:30', 1, { kettleAtMs: at('4:27'), lines: lines('sesame', 24) })]
    const looked = asked(lot('plain', 90))
    const first = pullsOf(looked, loads)
    const later = { ...looked, line: { ...looked.line, nowMs: at('4:10') } }
    expect(pullsOf(later, loads, first)).toEqual(first)
    expect(pullsOf(later, loads).map(({ atMs }) => atMs)).toEqual([at('4:10')])
  })
})
