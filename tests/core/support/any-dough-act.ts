import type { Act } from '../../../shared-core/day/commands.ts'
import type { DoughCommand } from '../../../shared-core/day/dough-commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { Mix } from '../../../shared-core/dough/mix.ts'
import { MIX_STAGES } from '../../../shared-core/dough/mix-stages.ts'
import { ingredientId, preparationId } from '../../../shared-core/ids.ts'
import { asked, g, kg, NO_MIX } from '../dough/acts-shop.ts'
import type { Draw } from './draw.ts'

type Makers = { readonly [Type in DoughCommand['type']]: (state: State, draw: Draw) => Act }

const DATES = ['2026-11-24', '2026-11-25', '2026-11-26', '2026-11-20'] as const

/** Acts of the dough room that the shop's state makes likely; wrong ones are among them. */
export const DOUGH_MAKERS: Makers = {
  setWanted: (_state, draw) => ({
    type: 'setWanted',
    date: draw.oneOf(DATES),
    lines: [
      {
        doughId: draw.oneOf(['plain', 'rye']) as never,
        varietyId: null,
        pieces: draw.upTo(200),
        ordered: draw.upTo(12),
      },
    ],
  }),
  planMixes: (_state, draw) => ({
    type: 'planMixes',
    date: draw.oneOf(DATES),
    mixes: [asked(draw.oneOf(['plain', 'raisin'])), asked('sour', {}, 1 + draw.upTo(20))],
  }),
  orderMixes: (state, draw) => ({
    type: 'orderMixes',
    mixes: [...new Set([someMix(state, draw).id, someMix(state, draw).id])].map((mixId) => ({
      mixId,
      startAtMs: null,
    })),
  }),
  dropMix: (state, draw) => ({ type: 'dropMix', mixId: someMix(state, draw).id }),
  weighLine: (state, draw) => {
    const mix = someMix(state, draw)
    const line = draw.oneOf(['flour', ...mix.lines.map(({ key }) => key)])
    return { type: 'weighLine', mixId: mix.id, line, done: draw.upTo(3) > 0 }
  },
  readMix: (state, draw) => ({
    type: 'readMix',
    mixId: someMix(state, draw).id,
    temp: draw.oneOf(['room', 'flour', 'preferment', 'tap', 'water', 'dough']),
    read: { thousandths: 60_000 + draw.upTo(30_000), unit: 'F' },
  }),
  moveMix: (state, draw) => {
    const mix = someMix(state, draw)
    const at = MIX_STAGES.indexOf(mix.stage)
    const to = draw.upTo(2) > 0 ? MIX_STAGES[at + 1] : draw.oneOf(MIX_STAGES)
    const isStage = to === 'mixing' || to === 'rest' || to === 'bulk' || to === 'bulkChill'
    return { type: 'moveMix', mixId: mix.id, from: mix.stage, to: isStage ? to : 'bench' }
  },
  foldMix: (state, draw) => {
    const mix = [...state.mixes.values()].find(({ stage }) => stage === 'bulk') ?? someMix(state, draw)
    return { type: 'foldMix', mixId: mix.id, fold: mix.folds + draw.upTo(1) + 1 }
  },
  endMix: (state, draw) => ({ type: 'endMix', mixId: someMix(state, draw).id, left: draw.oneOf(['lost', 'spoilt']) }),
  placeBatch: (state, draw) => ({
    type: 'placeBatch',
    batchId: draw.oneOf([...state.batches.keys(), 'none' as never]),
    place: draw.oneOf([null, 'Rack 1', 'Rack 2, level 5']),
  }),
  readPlace: (_state, draw) => ({
    type: 'readPlace',
    place: draw.oneOf(['room', 'cooler', 'flour', 'tap']),
    read: { thousandths: draw.upTo(30_000), unit: 'C' },
  }),
  countIngredients: (_state, draw) => ({
    type: 'countIngredients',
    counts: [{ ingredientId: ingredientId(draw.oneOf(['flour', 'water'])), weight: draw.oneOf([null, kg(50), g(1)]) }],
  }),
  receiveIngredient: (_state, draw) => ({
    type: 'receiveIngredient',
    ingredientId: ingredientId(draw.oneOf(['flour', 'salt'])),
    weight: kg(1 + draw.upTo(24)),
  }),
  makePreparation: (_state, draw) => ({ ...makePoolish(), milligrams: 1_000_000 + draw.upTo(4_000_000) }),
  dropBuild: (state, draw) => ({ type: 'dropBuild', buildId: draw.oneOf([...state.builds.keys(), 'none' as never]) }),
  weighPieces: (state, draw) => ({
    type: 'weighPieces',
    doughId: draw.oneOf(['plain', 'rye']) as never,
    mixId: draw.upTo(1) === 0 ? null : someMix(state, draw).id,
    weights: [g(115 + draw.upTo(10)), g(115 + draw.upTo(10))],
  }),
}

export function someMix(state: State, draw: Draw): Pick<Mix, 'id' | 'stage' | 'lines' | 'folds'> {
  const none = { id: NO_MIX, stage: 'mixing', lines: [], folds: 0 } as const
  return draw.oneOf([none, ...state.mixes.values(), ...state.mixes.values()])
}

export function makePoolish(): Extract<Act, { type: 'makePreparation' }> {
  return {
    type: 'makePreparation',
    preparationId: preparationId('poolish'),
    milligrams: 4_000_000,
    forDate: '2026-11-25',
  }
}
