import { fullFile } from './set-up-file-maker.ts'

/** A file whose dough room says every part: a pre-ferment fed from seed, a soaker, mix-ins, folds, a divider. */
export function doughRoomFile() {
  const { doughs, toppings, ...file } = fullFile()
  return {
    ...file,
    doughRoom: {
      from: '09:00',
      coolerBy: '17:30',
      scaleStep: { amount: 0.25, unit: 'oz' },
      flourIn: 'halfBags',
      surplusTo: 'plain',
      dividerPiecesPerHour: 3_000,
      handPiecesPerHour: 250,
      rollers: 2,
      proofTrays: 60,
      roomAt: { degrees: 72, unit: 'F' },
      flourAt: { degrees: 20.5, unit: 'C' },
      tapAt: { degrees: 58.5, unit: 'F' },
      hotTapAt: { degrees: 49, unit: 'C' },
      hasIce: true,
      provesAt: { degrees: 76, unit: 'F' },
      coolsIn: { minutes: 45 },
    },
    ingredients: [
      {
        id: 'high-gluten',
        name: 'High-gluten flour',
        kind: 'flour',
        contains: ['wheat'],
        price: { cents: 2_450, per: { amount: 50, unit: 'lb' } },
        bag: { amount: 50, unit: 'lb' },
      },
      { id: 'rye', name: 'Rye flour', kind: 'flour' },
      { id: 'water', name: 'Water', kind: 'water' },
      { id: 'salt', name: 'Salt', kind: 'salt', price: { cents: 90, per: { amount: 1, unit: 'kg' } } },
      { id: 'yeast', name: 'Instant yeast', kind: 'yeast' },
      { id: 'seeds', name: 'Seeds', kind: 'mixIn', contains: ['sesame'] },
      { id: 'old', name: 'Old malt', kind: 'malt', retired: true },
    ],
    preparations: [
      {
        id: 'culture',
        name: 'Culture',
        kind: 'preferment',
        lines: [
          { ingredient: 'high-gluten', percent: 100 },
          { ingredient: 'water', percent: 62.5 },
        ],
        seedPercent: 20,
        fedWith: { amount: 500, unit: 'g' },
        ready: { unit: 'h', earliest: 8, target: 12, latest: 16 },
      },
      {
        id: 'soaked-seeds',
        name: 'Soaked seeds',
        kind: 'soaker',
        lines: [
          { ingredient: 'seeds', percent: 100 },
          { ingredient: 'water', percent: 80 },
        ],
        ready: { unit: 'h', earliest: 2, target: 4, latest: 24 },
      },
    ],
    formulas: [
      {
        id: 'plain',
        name: 'Plain',
        lines: [
          { ingredient: 'high-gluten', percent: 97.5 },
          { ingredient: 'rye', percent: 2.5 },
          { ingredient: 'water', percent: 57 },
          { ingredient: 'salt', percent: 2 },
          { ingredient: 'yeast', percent: 0.6 },
          { ingredient: 'seeds', percent: 5, at: 'mixIn' },
        ],
        preparations: [
          { preparation: 'culture', percent: 20 },
          { preparation: 'soaked-seeds', percent: 5 },
        ],
        lossPercent: 1.5,
        bakeLossPercent: 12,
        doughAt: { degrees: 76, unit: 'F' },
        friction: { degrees: 24, unit: 'F' },
        mix: { minutes: 12 },
        mixInsAfter: { minutes: 10 },
        rest: { minutes: 7 },
        bulk: {
          window: { unit: 'h', earliest: 2, target: 2.5, latest: 3 },
          folds: [{ minutes: 30 }, { minutes: 60 }],
          chill: { unit: 'h', earliest: 8, target: 12, latest: 20 },
        },
        strength: 2,
        daysAhead: 2,
        decideBy: '10:30',
      },
    ],
    doughs: doughs.map((dough) =>
      dough.id === 'plain'
        ? {
            ...dough,
            formula: 'plain',
            pieceWeight: { amount: 4.25, unit: 'oz' },
            shapedBy: 'divider',
            labelWeight: { amount: 105, unit: 'g' },
          }
        : dough,
    ),
    toppings: toppings.map((topping) =>
      topping.id === 'sesame'
        ? { ...topping, madeOf: [{ ingredient: 'seeds', weight: { amount: 6, unit: 'g' } }] }
        : topping,
    ),
  }
}
