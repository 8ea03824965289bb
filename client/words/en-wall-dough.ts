import type { WallDoughWords } from './wall-dough.ts'

export function enWallDough(): WallDoughWords {
  return {
    mixes: 'Mixes',
    proofing: 'Proofing',
    nothingProofing: 'Nothing is proofing',
    cooler: (trays, of) => `cooler ${of === null ? trayCount(trays) : `${trays} of ${trayCount(of)}`}`,
    coolerOver: (trays) => `cooler ${trayCount(trays)} too many`,
    stage: (stage) => STAGES[stage],
    toMixIns: 'mix-ins next',
    toFold: (n) => `fold ${n} next`,
    pieces: (pieces, dough) => `${pieces} ${dough}`,
    shaped: (pieces, of) => `${pieces} of ${of} shaped`,
    trays: trayCount,
    acts: {
      prepare: (name) => `make ${name}`,
      feed: (name) => `feed ${name}`,
      startMix: (name) => `mix ${name}`,
      mixIns: (name) => `mix-ins into ${name}`,
      mixerOff: (name) => `mixer off: ${name}`,
      restOver: (name) => `rest over: ${name}`,
      fold: (name, n) => `fold ${n}: ${name}`,
      bulkOver: (name) => `bulk over: ${name}`,
      bulkChillOver: (name) => `bulk out of the cooler: ${name}`,
      chill: (name) => `chill ${name}`,
      use: (name) => `use first: ${name}`,
    },
  }
}

const STAGES = {
  planned: 'next',
  mixing: 'mixing',
  rest: 'resting',
  bulk: 'in bulk',
  bulkChill: 'in bulk, chilled',
  bench: 'on the bench',
} as const

function trayCount(trays: number): string {
  return `${trays} ${trays === 1 ? 'tray' : 'trays'}`
}
