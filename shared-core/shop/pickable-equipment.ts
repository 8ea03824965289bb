import { spanMs } from '../units.ts'
import { DEFAULT_KETTLE_CARE, DEFAULT_MIXER } from './default-rules.ts'
import type { Cooler, Kettle, Language, Mixer, Profile, Temperature, Weight } from './shop.ts'

/**
 * Equipment of small, usual and large shops to pick from when a set-up is made. Sizes and times are common practice, no
 * source: the plate on the machine and a stopwatch decide.
 */
export interface Pick<Part> {
  readonly id: string
  readonly name: string
  readonly part: Part
}

export function pickableKettles(language: Language): Pick<Kettle>[] {
  return KETTLES.map(({ id, pieces, seconds, name }) => {
    const part = { pieces, cycleMs: spanMs(seconds, 's'), ...DEFAULT_KETTLE_CARE }
    return { id, name: name[language], part }
  })
}

const KETTLES = [
  { id: 'pot', pieces: 12, seconds: 90, name: { en: 'A pot on the stove', es: 'Una olla en el fogón' } },
  { id: 'kettle', pieces: 36, seconds: 90, name: { en: 'A kettle', es: 'Una olla grande' } },
  { id: 'big-kettle', pieces: 72, seconds: 90, name: { en: 'A big kettle', es: 'Una olla muy grande' } },
] as const

/** Stiff dough takes half of what the same bowl takes of a soft one. In pounds or kilograms, as the shop weighs. */
export function pickableMixers(language: Language, weight: Profile['weight']): Pick<Mixer>[] {
  return MIXERS.map(({ id, kg, lb, name }) => {
    const [least, most] = weight === 'g' ? kg : lb
    const unit = weight === 'g' ? 'kg' : 'lb'
    const flour = { leastFlour: whole(least, unit), mostFlour: whole(most, unit) }
    return { id, name: name[language], part: { ...DEFAULT_MIXER, name: MIXER_NAME[language], ...flour } }
  })
}

/** Short: it stands on the mix sheet, and a shop with one mixer needs no more. */
const MIXER_NAME: Readonly<Record<Language, string>> = { en: 'Mixer', es: 'Amasadora' }

const MIXERS = [
  { id: 'small', kg: [1, 4], lb: [2, 8], name: { en: 'Small, 20 quarts', es: 'Pequeña, 20 litros' } },
  { id: 'middle', kg: [4, 16], lb: [10, 35], name: { en: 'Middle, 60 quarts', es: 'Mediana, 60 litros' } },
  { id: 'large', kg: [8, 25], lb: [20, 50], name: { en: 'Large, 80 quarts', es: 'Grande, 80 litros' } },
  {
    id: 'spiral',
    kg: [10, 50],
    lb: [25, 100],
    name: { en: 'Spiral, a bag at a time', es: 'Espiral, de saco en saco' },
  },
] as const

export function pickableCoolers(language: Language, unit: Temperature['unit']): Pick<Cooler>[] {
  return COOLERS.map(({ id, trays, name }) => {
    const keepsAt = unit === 'C' ? ({ degrees: 4, unit } as const) : ({ degrees: 38, unit } as const)
    return { id, name: name[language], part: { trays, keepsAt } }
  })
}

const COOLERS = [
  { id: 'upright', trays: 18, name: { en: 'Upright', es: 'Vertical' } },
  { id: 'two-racks', trays: 40, name: { en: 'Walk-in, two racks', es: 'Cámara, dos carros' } },
  { id: 'six-racks', trays: 120, name: { en: 'Walk-in, six racks', es: 'Cámara, seis carros' } },
] as const

function whole(amount: number, unit: Weight['unit']): Weight {
  return { thousandths: amount * 1_000, unit }
}
