import type { LearntWords } from './desk-dough-learnt.ts'

export const enLearnt: LearntWords = {
  friction: 'Friction',
  frictionHint:
    'What the mixer warms a dough by, learnt from dough temperatures read after mixing. One odd reading changes little.',
  noFriction: 'Nothing is learnt yet: read the dough’s temperature after a mix.',
  frictionColumns: {
    formula: 'formula',
    mixer: 'mixer',
    value: 'reckoned with',
    setUp: 'set-up',
    readings: 'readings, the oldest first',
    trust: 'how far to trust it',
  },
  withPreferment: 'with pre-ferment',
  trust: {
    few: 'too few readings yet: the set-up weighs most',
    spread: 'readings differ widely: look how they are taken',
    good: 'readings agree',
  },
  pace: 'Pace of each dough',
  paceHint: 'What float and poke tests have taught: how much of its set-up’s window a dough needs.',
  noPace: 'No test has been recorded yet.',
  paceSays: (percent) =>
    percent === 100
      ? 'as the set-up says'
      : percent < 100
        ? `ready ${100 - percent} % sooner than the set-up says`
        : `needs ${percent - 100} % longer than the set-up says`,
  paceTest: (passed, percent, date) => `${date}: ${passed ? 'ready' : 'not ready'} at ${percent} %`,
  divider: 'Divider checks',
  dividerHint: 'Pieces weighed at the divider against what they should weigh.',
  noDivider: 'No pieces have been weighed yet. The bench weighs them.',
  dividerColumns: {
    dough: 'dough',
    scaled: 'should weigh',
    pieces: 'weighed',
    off: 'off by, on average',
    spread: 'spread',
    drift: 'drift',
    says: 'what it says',
  },
  off: (weight, within) => `${weight}${within === null ? '' : ` ± ${within}`}`,
  perHour: (weight) => `${weight} an hour`,
  perDay: (weight) => `${weight} a day`,
  dividerSays: {
    tooFew: 'too few to say anything',
    onWeight: 'on weight',
    heavy: 'too heavy',
    light: 'too light',
    spread: 'pieces differ much',
    risingWeight: 'gets heavier',
    fallingWeight: 'gets lighter',
  },
  label: 'Against the label',
  labelHint:
    'What the weighed pieces should weigh baked, against the weight on the label. Only weighing baked pieces tells what they came to.',
  labelHead: (dough, label, count) => `${dough}, labelled ${label}: ${count} pieces`,
  verdict: {
    passes: 'Passes both rules.',
    failsAverage: 'Fails the average requirement: on average too light.',
    failsPackages: 'Fails for single pieces: some are lighter than is allowed.',
    failsBoth: 'Fails both rules: on average too light, and some are lighter than is allowed.',
    tooFew: 'Fewer than 12 pieces: nothing can be said.',
    notInTable: 'The table that the board knows does not go up to such a label.',
  },
  labelFigures: (average, limit) => `average error ${average}${limit === null ? '' : `, sample error limit ${limit}`}`,
  allowed: (weight, tooLight) =>
    `maximum allowable variation ${weight}; ${tooLight} ${tooLight === 1 ? 'piece is' : 'pieces are'} further below`,
  source: 'By NIST Handbook 133, chapter 2, Category A.',
  office: 'A help to see trouble coming, no verdict of law: ask your weights-and-measures office.',
}
