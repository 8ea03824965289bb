import { stepId } from '../ids.ts'
import { spanMs } from '../units.ts'
import type { Language, OvenKind, Step } from './shop.ts'

/** A step to begin with: minutes from its list's zero, before it negative, and its name in each language. */
interface Start {
  readonly id: string
  readonly list: Step['list']
  readonly minutes: number
  readonly kind?: Step['kind']
  readonly name: Readonly<Record<Language, string>>
}

/**
 * Opening and changeover of a shop that has said nothing yet. Common practice, no source, and there to be changed: decks
 * soak up heat for an hour and a half, a wood fire burns three hours before its floor is even; a large kettle boils
 * within the hour; boards soak as long; trays stand out a good half hour before they are boiled.
 */
export function startingSteps(kind: OvenKind, language: Language): Step[] {
  return [...BY_OVEN[kind], ...ALL_OVENS]
    .sort((one, other) => rank(one) - rank(other) || one.minutes - other.minutes)
    .map(({ id, list, minutes, kind: stepKind, name }, order) => ({
      id: stepId(id),
      name: name[language],
      order,
      list,
      offsetMs: minutes < 0 ? 0 - spanMs(-minutes, 'min') : spanMs(minutes, 'min'),
      kind: stepKind ?? 'plain',
      retired: false,
    }))
}

function rank({ list }: Start): number {
  return list === 'opening' ? 0 : 1
}

const ALL_OVENS: readonly Start[] = [
  {
    id: 'kettle-lit',
    list: 'opening',
    minutes: -60,
    name: { en: 'Fill and light the kettle', es: 'Llenar y encender la olla' },
  },
  {
    id: 'boards-soak',
    list: 'opening',
    minutes: -60,
    name: { en: 'Put the boards to soak', es: 'Poner las tablas en remojo' },
  },
  {
    id: 'trays-out',
    list: 'opening',
    minutes: -40,
    name: { en: 'Pull the first trays', es: 'Sacar las primeras bandejas' },
  },
  {
    id: 'seed-trays',
    list: 'opening',
    minutes: -30,
    name: { en: 'Fill the seed trays', es: 'Llenar las bandejas de semillas' },
  },
  {
    id: 'float-test',
    list: 'opening',
    minutes: -20,
    kind: 'float-test',
    name: { en: 'Float test', es: 'Prueba de flotación' },
  },
  {
    id: 'second-dough',
    list: 'changeover',
    minutes: -60,
    name: { en: 'Pull the second menu’s dough', es: 'Sacar la masa del segundo menú' },
  },
  { id: 'kettle-drained', list: 'changeover', minutes: -10, name: { en: 'Drain the kettle', es: 'Vaciar la olla' } },
  { id: 'last-load-out', list: 'changeover', minutes: 0, name: { en: 'Last load out', es: 'Última hornada fuera' } },
  {
    id: 'boards-dry',
    list: 'changeover',
    minutes: 15,
    name: { en: 'Scrub the boards, stand them to dry', es: 'Lavar las tablas y ponerlas a secar' },
  },
]

const OVEN_TURNED: Start = {
  id: 'oven-turned',
  list: 'changeover',
  minutes: 10,
  name: { en: 'Turn the oven up or down', es: 'Subir o bajar el horno' },
}

const BY_OVEN: Readonly<Record<OvenKind, readonly Start[]>> = {
  shelves: [
    { id: 'oven-on', list: 'opening', minutes: -90, name: { en: 'Turn the oven on', es: 'Encender el horno' } },
    {
      id: 'stones-brushed',
      list: 'changeover',
      minutes: 5,
      name: { en: 'Brush the stones', es: 'Cepillar las piedras' },
    },
    OVEN_TURNED,
  ],
  rotating: [
    { id: 'oven-on', list: 'opening', minutes: -75, name: { en: 'Turn the oven on', es: 'Encender el horno' } },
    {
      id: 'turning',
      list: 'opening',
      minutes: -45,
      name: { en: 'Start the shelves turning', es: 'Poner a girar los estantes' },
    },
    {
      id: 'stones-brushed',
      list: 'changeover',
      minutes: 5,
      name: { en: 'Brush the shelves', es: 'Cepillar los estantes' },
    },
    OVEN_TURNED,
  ],
  hearth: [
    { id: 'fire-lit', list: 'opening', minutes: -180, name: { en: 'Light the fire', es: 'Encender el fuego' } },
    {
      id: 'embers-raked',
      list: 'opening',
      minutes: -35,
      name: { en: 'Rake the embers aside', es: 'Apartar las brasas' },
    },
    {
      id: 'floor-swabbed',
      list: 'opening',
      minutes: -15,
      name: { en: 'Swab the floor', es: 'Limpiar el suelo del horno' },
    },
    {
      id: 'stones-brushed',
      list: 'changeover',
      minutes: 5,
      name: { en: 'Brush the floor', es: 'Cepillar el suelo del horno' },
    },
    {
      id: 'fire-fed',
      list: 'changeover',
      minutes: 10,
      name: { en: 'Feed the fire or let it down', es: 'Avivar o bajar el fuego' },
    },
  ],
}
