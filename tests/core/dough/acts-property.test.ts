import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assertAccounted } from '../../../shared-core/day/account.ts'
import { applyEntry } from '../../../shared-core/day/apply.ts'
import type { Act } from '../../../shared-core/day/commands.ts'
import { dayAccount } from '../../../shared-core/day/day-account.ts'
import { decide } from '../../../shared-core/day/decide.ts'
import type { Entry } from '../../../shared-core/day/events.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { forkState } from '../../../shared-core/day/state-json.ts'
import { leftOf } from '../../../shared-core/dough/mix-left.ts'
import { onHandNow } from '../../../shared-core/dough/on-hand.ts'
import { doughMilligramsOf } from '../../../shared-core/dough/scale.ts'
import { milligrams } from '../../../shared-core/shop/weight.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { anyAct, startedShop } from '../support/any-act.ts'
import { DOUGH_MAKERS, someMix } from '../support/any-dough-act.ts'
import type { Draw } from '../support/draw.ts'
import { drawer } from '../support/draw.ts'
import { at } from '../support/make.ts'
import { context, entryOf, tap } from '../support/play.ts'

const MAKERS = Object.values(DOUGH_MAKERS)
const seeds = fc.array(fc.nat({ max: 2 ** 31 - 1 }), { minLength: 20, maxLength: 90 })

/** Acts of the dough room mostly, the line's and the day's between them. */
function room(drawn: readonly number[], each: (entry: Entry, after: State, act: Act) => void): State {
  const state = startedShop()
  drawn.forEach((seed, n) => {
    const when = { nowMs: epochMs(at('5:00') + n * 300_000), id: `act${String(n).padStart(8, '0')}` }
    const draw = drawer(seed)
    const act = drawnAct(state, seed, draw)
    const command = tap(act, { ...when, confirmed: ['far-count', 'line-not-empty', 'orders-open'] })
    const decision = decide(state, command, context(when))
    if (decision.kind !== 'taken') return
    const entry = entryOf(state, command, decision, when)
    applyEntry(state, entry)
    each(entry, state, act)
  })
  return state
}

function drawnAct(state: State, seed: number, draw: Draw): Act {
  const last = state.traces.at(-1 - draw.upTo(2))
  switch (draw.upTo(13)) {
    case 0:
      return state.day === null ? { type: 'reopenDay', label: state.lastDay?.label ?? '' } : { type: 'closeDay' }
    case 1:
      return last === undefined ? anyAct(state, seed) : { type: 'takeBack', commandId: last.commandId }
    case 2:
      return anyAct(state, seed)
    case 3:
    case 4:
      return shapeOfMix(state, draw)
    default:
      return draw.oneOf(MAKERS)(state, draw)
  }
}

/** Pieces out of a mix, more than it holds now and then, and its last ones. */
function shapeOfMix(state: State, draw: Draw): Act {
  const mixId = someMix(state, draw).id
  const doughId = draw.oneOf(['plain', 'rye']) as never
  const isLast = draw.upTo(3) === 0 ? { isLast: true } : {}
  return { type: 'shape', doughId, varietyId: null, pieces: 1 + draw.upTo(150), stage: 'proof', mixId, ...isLast }
}

describe('any hours in the dough room', () => {
  it('[D69] given any acts, then after each all dough of each mix is somewhere, and nothing of it is negative', () => {
    const seen = { ended: 0, shaped: 0, moreThanWasThere: 0 }
    fc.assert(
      fc.property(seeds, (drawn) => {
        room(drawn, (_entry, after) => {
          assertAccounted(after)
          for (const mix of after.mixes.values()) {
            const { shapedMilligrams: shaped, lostMilligrams: lost, spoiltMilligrams: spoilt } = mix
            expect(Math.min(shaped, lost, spoilt, leftOf(mix))).toBeGreaterThanOrEqual(0)
            expect(mix.unexplainedMilligrams).toBeLessThanOrEqual(0)
            seen.ended += mix.stage === 'ended' ? 1 : 0
            seen.shaped += shaped > 0 ? 1 : 0
            seen.moreThanWasThere += mix.unexplainedMilligrams < 0 ? 1 : 0
            if (mix.mixedAtMs !== null)
              expect(shaped + lost + spoilt + mix.unexplainedMilligrams + leftOf(mix)).toBe(
                doughMilligramsOf(mix.lines),
              )
          }
        })
      }),
      { numRuns: 60 },
    )
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(50)
  })

  it('[D71] given any acts, then flour on hand is what was counted and delivered less what the acts that hold took', () => {
    const seen = { known: 0, takenBack: 0, reopened: 0 }
    fc.assert(
      fc.property(seeds, (drawn) => {
        let held: Held[] = []
        const sheets = new Map<string, number>()
        room(drawn, (entry, after, act) => {
          const back = entry.events.flatMap((event) => (event.type === 'takenBack' ? [event.commandId] : []))
          held = [...held.filter((one) => !back.includes(one.entry.commandId)), { entry, act }]
          for (const { id, lines } of after.mixes.values()) sheets.set(id, flourIn(lines))
          const known = onHandNow(after).find(({ ingredientId }) => ingredientId === 'flour')?.milligrams ?? null
          expect(known).toBe(flourOf(held, sheets))
          seen.known += known === null ? 0 : 1
          seen.takenBack += back.length
          seen.reopened += entry.told.type === 'reopenDay' ? 1 : 0
        })
      }),
      { numRuns: 60 },
    )
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(0)
  })

  it('[D77] given any acts of a day, then its dough by formula adds up', () => {
    fc.assert(
      fc.property(seeds, (drawn) => {
        const start = startedShop()
        const entries: Entry[] = []
        room(drawn, (entry) => entries.push(entry))
        const close = entries.findIndex(({ events }) => events.some(({ type }) => type === 'dayClosed'))
        const own = close < 0 ? entries : entries.slice(0, close + 1)
        if (own.length === 0) return
        for (const one of dayAccount(forkState(start), own).formulas) {
          const gone = one.shaped + one.lost + one.spoilt + one.unexplained + one.left
          expect(one.mixed + one.carriedIn).toBe(gone)
        }
      }),
      { numRuns: 30 },
    )
  })
})

interface Held {
  readonly entry: Entry
  readonly act: Act
}

/** Flour of what was told, in order; an independent sum over the events that hold. */
function flourOf(held: readonly Held[], sheets: ReadonlyMap<string, number>): number | null {
  let known: number | null = null
  const took = (milligrams: number) => {
    if (known !== null) known -= milligrams
  }
  for (const { entry, act } of held) {
    for (const event of entry.events) {
      if (event.type === 'mixMoved' && event.begun !== null) took(sheets.get(event.mixId) ?? 0)
      if (event.type === 'preparationMade') took(flourIn(event.build.lines))
    }
    if (act.type === 'receiveIngredient' && act.ingredientId === 'flour') known = (known ?? 0) + milligrams(act.weight)
    const count = act.type === 'countIngredients' ? act.counts.find((one) => one.ingredientId === 'flour') : undefined
    if (count !== undefined) known = count.weight === null ? null : milligrams(count.weight)
  }
  return known
}

function flourIn(lines: readonly { readonly ingredientId: string | null; readonly milligrams: number }[]): number {
  return lines.reduce((sum, one) => (one.ingredientId === 'flour' ? sum + one.milligrams : sum), 0)
}
