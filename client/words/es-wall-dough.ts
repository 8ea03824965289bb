import type { WallDoughWords } from './wall-dough.ts'

export function esWallDough(): WallDoughWords {
  return {
    mixes: 'Amasijos',
    proofing: 'Leudando',
    nothingProofing: 'Nada está leudando',
    cooler: (trays, of) => `cámara ${of === null ? trayCount(trays) : `${trays} de ${trayCount(of)}`}`,
    coolerOver: (trays) => `cámara: ${trayCount(trays)} de más`,
    stage: (stage) => STAGES[stage],
    toMixIns: 'añadir',
    toFold: (n) => `plegado ${n}`,
    pieces: (pieces, dough) => `${pieces} ${dough}`,
    shaped: (pieces, of) => `${pieces} de ${of} formadas`,
    trays: trayCount,
    acts: {
      prepare: (name) => `preparar ${name}`,
      feed: (name) => `alimentar ${name}`,
      startMix: (name) => `amasar ${name}`,
      mixIns: (name) => `añadidos a ${name}`,
      mixerOff: (name) => `parar amasadora: ${name}`,
      restOver: (name) => `fin del reposo: ${name}`,
      fold: (name, n) => `plegado ${n}: ${name}`,
      bulkOver: (name) => `fin del bloque: ${name}`,
      bulkChillOver: (name) => `bloque fuera del frío: ${name}`,
      chill: (name) => `enfriar ${name}`,
      use: (name) => `usar ${name}`,
    },
  }
}

const STAGES = {
  planned: 'sigue',
  mixing: 'amasando',
  rest: 'en reposo',
  bulk: 'en bloque',
  bulkChill: 'en bloque, en frío',
  bench: 'en la mesa',
} as const

function trayCount(trays: number): string {
  return `${trays} ${trays === 1 ? 'bandeja' : 'bandejas'}`
}
