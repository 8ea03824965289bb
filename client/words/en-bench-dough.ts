import type { BenchWords } from './bench.ts'
import type {
  BatchWords,
  DividerWords,
  MixWords,
  PreparationWords,
  RoomSentences,
  ShapeWords,
  TempWords,
} from './bench-dough.ts'
import { unbroken } from './joined.ts'

export function enBenchDough(words: BenchWords): RoomSentences {
  const { times } = words
  return {
    title: 'Dough room',
    back: 'Back to the dough room',
    backOne: 'Back',
    way: {
      scale: 'Scale',
      mixer: 'Mixer',
      bench: 'Bench',
      proof: 'Proof',
      cooler: 'Cooler',
      nothing: 'nothing here',
      nothingDue: 'nothing due',
      nothingPlanned: 'no mixes planned: the desk plans them',
      noRoom: 'The shop has no formulas yet. Enter them at the desk.',
      line: 'The way of the dough',
      trays: (trays, most) => (most === null ? `${trays} trays` : `${trays} of ${most} trays`),
      more: (count) => `and ${count} more`,
    },
    acts: {
      begin: (name) => `Make ${name}`,
      feed: (name) => `Feed ${name}`,
      mix: (name) => `Mix ${name}`,
      mixIn: (name) => `Mix-ins into ${name}`,
      mixerOff: (name) => `Mixer off: ${name}`,
      restOver: (name) => `Rest over: ${name}`,
      fold: (n, of, name) => `Fold ${n} of ${of}: ${name}`,
      bulkOver: (name) => `Bulk over: ${name}`,
      chill: (name) => `Chill ${name}`,
      use: (name) => `Use first: ${name}`,
    },
    mix: mix(words),
    temps: temps(),
    shape: shape(words),
    batch: batch(words),
    made: made(words),
    readings: {
      title: 'Temperatures',
      places: { room: 'Room', cooler: 'Cooler', flour: 'Flour', tap: 'Tap water' },
      readAt: (text, atMs) => `${text} ${times.at(atMs)}`,
      assumed: (text) => `assumed ${text}`,
      hint: 'Proof and chill clocks follow the room and the cooler.',
    },
    divider: divider(),
    pad: { save: 'Save', clear: 'Clear', back: '⌫', typeFirst: 'type first' },
  }
}

function mix({ times }: BenchWords): MixWords {
  return {
    name: (formula, nth, of) => (of > 1 ? `${formula} ${nth} of ${of}` : formula),
    stage: (stage) =>
      ({
        planned: 'to weigh',
        mixing: 'mixing',
        rest: 'resting',
        bulk: 'in bulk',
        bulkChill: 'chilling in bulk',
        bench: 'divide and shape',
        ended: 'ended',
      })[stage],
    forDate: (date) => `for ${times.date(date)}`,
    start: (atMs) => `start ${times.at(atMs)}`,
    weighed: (done, of) => `${done} of ${of} weighed`,
    allWeighed: 'all weighed',
    lineWeighed: 'Weighed',
    notWeighed: 'Not weighed after all',
    mixIn: 'mix-in',
    unripe: (atMs) => `not ripe before ${times.clock(atMs)}`,
    noneMade: 'none made',
    startMixing: 'Start the mixer',
    toWeigh: (lines) => `${lines} ${lines === 1 ? 'line' : 'lines'} not weighed`,
    mixerOff: 'Mixer off',
    mixInsAt: (atMs) => `mix-ins ${times.at(atMs)}`,
    mixInsNow: 'mix-ins now',
    onToRest: 'On to rest',
    onToBulk: 'On to bulk',
    onToBulkChill: 'Bulk into the cooler',
    onToBench: 'On to the bench',
    backTo: 'Back a step',
    fold: (n, of) => `Fold ${n} of ${of}`,
    foldAt: (n, atMs) => `fold ${n} ${times.at(atMs)}`,
    doughRead: (read, wished) => `dough ${read}, wished ${wished}`,
    notTaught: 'this mix taught no friction: flour, room or water was not read',
    friction: (by, mixes) =>
      mixes === 0 ? `mixer warms by ${by}` : `mixer warms by ${by}, from ${mixes} ${mixes === 1 ? 'mix' : 'mixes'}`,
    gone: 'This mix is over.',
    caution: 'The board is an aid, not a safety device: keep hands and cloth out of a running mixer.',
  }
}

function temps(): TempWords {
  return {
    names: { room: 'Room', flour: 'Flour', preferment: 'Pre-ferment', tap: 'Tap', water: 'Water', dough: 'Dough' },
    assumed: (text) => `assumed ${text}`,
    notRead: 'not read',
    water: (degrees) => `at ${degrees}`,
    ice: (weight) => `+ ${weight} ice`,
    reach: (reach, dough) =>
      ({
        reached: '',
        needsWarm: 'warm the water',
        tooCold: `No water is cold enough: the dough comes to ${dough}`,
        tooWarm: `No water may be that warm: the dough comes to ${dough}`,
      })[reach],
    unknown: 'No water temperature yet: read flour, room and tap.',
  }
}

function shape({ line }: BenchWords): ShapeWords {
  return {
    left: (pieces, weight) => `about ${pieces} pieces left, ${weight}`,
    leftWeight: (weight) => `${weight} left`,
    gives: (pieces, dough) => `planned: ${pieces} ${dough}`,
    by: { divider: 'by divider', hand: 'by hand' },
    piece: (weight) => `${weight} a piece`,
    put: (pieces, dough) => `${pieces} ${dough} onto trays`,
    thatIsAll: 'Onto trays, that is all of it',
    restLost: (weight) => (weight === null ? 'nothing is left' : `${weight} left counts as lost`),
    stillToCome: (names) => `${line.list(names)} still to come`,
    nothingMore: 'Nothing more comes',
    spoilt: 'What is left is spoilt',
    place: 'Rack and level',
    noPlace: 'not said',
    placeHint: 'Rack and level, as 2-7',
    noDough: 'No dough of the set-up is shaped from this formula.',
    check: 'Divider check',
  }
}

function batch({ times }: BenchWords): BatchWords {
  return {
    chill: 'Into the cooler',
    passed: 'Float or poke test passed',
    notReady: 'Not ready',
    place: 'Rack and level',
    partOrWaste: 'Part of it, or spoilt',
    proof: (until, nowMs) => {
      if (until === null) return ''
      if (nowMs > until.latestAtMs) return `over ${times.since(until.latestAtMs)}`
      if (nowMs >= until.targetAtMs) return `ready, chill ${times.by(until.latestAtMs)}`
      return `ready ${times.at(until.targetAtMs)}`
    },
    chilled: (until, nowMs) => {
      if (until === null) return ''
      if (nowMs > until.latestAtMs) return `over by ${unbroken(times.span(nowMs - until.latestAtMs))}`
      if (nowMs < until.earliestAtMs) return `boil from ${times.clock(until.earliestAtMs)}`
      return `boil within ${unbroken(times.left(until.latestAtMs - nowMs))}`
    },
    gone: 'These pieces have moved on.',
    at: (place) => `rack ${place}`,
  }
}

function made({ times }: BenchWords): PreparationWords {
  return {
    title: 'Preparations',
    nothing: 'Nothing to make or feed today.',
    made: 'Made',
    fed: 'Fed',
    forDate: (weight, date) => `${weight} for ${times.date(date)}`,
    seed: (weight) => `${weight} of the ripe one`,
    other: 'Other weight',
    ripe: (atMs, latestAtMs, nowMs) => {
      if (nowMs > latestAtMs) return `past its window, ${times.late(nowMs - latestAtMs)}`
      return nowMs < atMs ? `ripe in ${times.left(atMs - nowMs)}` : `ripe, use ${times.by(latestAtMs)}`
    },
    drop: 'Thrown away',
  }
}

function divider(): DividerWords {
  return {
    title: 'Divider check',
    whichDough: 'Which dough is weighed',
    should: (weight) => `a piece should weigh ${weight}`,
    weighed: (weights) => `weighed: ${weights.join(', ')}`,
    add: 'Add the piece',
    save: (pieces) => `Save ${pieces} ${pieces === 1 ? 'piece' : 'pieces'}`,
    nothing: 'No dough has a piece weight: enter it at the desk.',
    mean: (by, isHeavy) => `${by} too ${isHeavy ? 'heavy' : 'light'} on average`,
    spread: (by) => `spread ${by}`,
    drift: (by, isMore) => `${by} ${isMore ? 'more' : 'less'} an hour`,
    code: (code) =>
      ({
        tooFew: 'too few pieces to say more',
        onWeight: 'on weight',
        heavy: 'set the divider lighter',
        light: 'set the divider heavier',
        spread: 'pieces differ much',
        risingWeight: 'pieces get heavier',
        fallingWeight: 'pieces get lighter',
      })[code],
    verdict: (verdict, label) =>
      ({
        passes: `label ${label}: holds`,
        failsAverage: `label ${label}: too light on average`,
        failsPackages: `label ${label}: single pieces too light`,
        failsBoth: `label ${label}: too light, on average and singly`,
        tooFew: `label ${label}: weigh 12 at least`,
        notInTable: `label ${label}: not in the table`,
      })[verdict],
    office: 'By NIST Handbook 133, an aid: ask your weights-and-measures office.',
  }
}
