import { ES_BAKING, ES_BAKING_MISFITS } from './es-set-up-baking.ts'
import { ES_DEMAND, ES_DEMAND_MISFITS } from './es-set-up-demand.ts'
import { ES_DOUGH, ES_DOUGH_MISFITS } from './es-set-up-dough.ts'
import { ES_FIELDS, ES_OPTIONS } from './es-set-up-fields.ts'
import { ES_FILE, ES_FORM, ES_GUIDE, ES_LIST, ES_SAVE, ES_VERSIONS } from './es-set-up-ways.ts'
import type { SetUpSentences, SumWords } from './set-up.ts'
import type { Words } from './words.ts'

export function esSetUp({ cautions }: Words): SetUpSentences {
  return {
    title: 'Configuración',
    intro: 'Qué es el local: horario, horno, olla, masas, variedades, tiempos y quién toca qué.',
    lead: 'Recorrerla paso a paso',
    newShop: 'Este local es nuevo. Siete pasos cortos y se abren las pantallas; cada paso ya trae valores razonables.',
    back: 'Volver al escritorio',
    overview: 'Todas las partes',
    groups: {
      shop: 'El local',
      equipment: 'Equipo',
      made: 'Lo que se hace',
      mixed: 'El cuarto de masas',
      howMany: 'Cuántas',
      work: 'Cómo va el trabajo',
      changes: 'Cambios',
    },
    parts: PARTS,
    about: ABOUT,
    fields: ES_FIELDS,
    options: ES_OPTIONS,
    dough: ES_DOUGH,
    demand: ES_DEMAND,
    baking: ES_BAKING,
    list: ES_LIST,
    form: ES_FORM,
    guide: ES_GUIDE,
    save: ES_SAVE,
    versions: ES_VERSIONS,
    file: ES_FILE,
    sums: SUMS,
    cautions: {
      timers: cautions.aid,
      oven: 'Pisos, piedras y puertas calientes queman: una lectura en pantalla no dice que se pueda tocar un horno.',
      kettle:
        'El agua hirviendo y el vapor queman: apártese al meter la masa y deje enfriar la olla antes de vaciarla.',
      allergens:
        'Lo que se muestra de alérgenos sale de lo que se anota aquí y de nada más. El contacto cruzado lo juzga la gente del lugar; el tablero nunca dice que algo esté libre de un alérgeno.',
    },
    misfit: (entity, field) => MISFITS[`${entity}/${field.split('/')[0]}`] ?? null,
    entity: (entity, name) => (name === null ? ENTITIES[entity] : `${ENTITIES[entity]} ${name}`),
  }
}

const PARTS: SetUpSentences['parts'] = {
  shop: 'Local',
  hours: 'Horario',
  people: 'Gente',
  counter: 'Mostrador',
  oven: 'Horno',
  kettle: 'Olla',
  boards: 'Tablas',
  room: 'Amasadora y frío',
  doughs: 'Masas',
  toppings: 'Coberturas',
  varieties: 'Variedades',
  doughRoom: 'Cómo trabaja',
  formulas: 'Fórmulas',
  preparations: 'Prefermentos y remojos',
  ingredients: 'Ingredientes',
  worth: 'Lo que valen las piezas',
  baking: 'Qué carga y cuándo',
  usual: 'Un día de siempre',
  specialDays: 'Días especiales',
  windows: 'Tiempos',
  steps: 'Apertura y cambio',
  stations: 'Quién toca qué',
  screens: 'Pantallas',
  save: 'Ver y guardar',
  versions: 'Versiones',
  file: 'En un archivo',
}

const ABOUT: SetUpSentences['about'] = {
  shop: 'Cómo se llama en las pantallas, y cómo dicen horas, temperaturas y pesos.',
  hours: 'El día de siempre y los días que son distintos. La regla de cada pantalla los sigue.',
  people: 'Nombres para encargar un paso de una lista. Basta como se llaman entre ustedes.',
  counter: 'Cómo sabe el mostrador lo que queda.',
  oven: 'Un piso es lo que se carga de una vez.',
  kettle: 'Cuánto entra en una tanda y cuándo puede seguir la próxima; y cuándo pide cuidado el agua.',
  boards: 'El primer lado va sobre tablas mojadas. Una tabla se ocupa desde sacar de la olla hasta voltear.',
  room: 'Cuánto puede ser un amasijo y cuánto cabe en el frío. Sin decirlo, no se calcula con ello.',
  doughs: 'Cada una tiene su camino por el local. Las retiradas quedan en los registros.',
  toppings: 'Semillas, sal, mezclas: lo que va por fuera.',
  varieties: 'Una masa, un tamaño y forma, y una cobertura.',
  doughRoom: 'Horas, manos, báscula, agua y aire: con ello se planean los amasijos y se calcula el agua.',
  formulas:
    'Lo que se amasa, en porcentaje de panadero: toda la harina es 100 %. De una fórmula se forman varias masas.',
  preparations: 'Se hacen antes de amasar; su harina y su agua cuentan en la fórmula.',
  ingredients: 'Lo que se compra: su tipo, alérgenos de la etiqueta, precio y saco.',
  worth: 'Lo que cuesta que falten y que sobren: el número de piezas que se aconseja equilibra las dos cosas.',
  baking: 'Con qué cuenta el plan y qué pesa: frescura, manos y personas, lo que debe estar a la vista.',
  usual: 'Piezas de cada variedad en un día de siempre, antes de que haya ventas de las que aprender.',
  specialDays:
    'Días que venden distinto que su día de la semana. Lo que hacen con las ventas se aprende por su nombre, con los años.',
  windows:
    'Lo más temprano, lo ideal y lo más tarde de cada etapa, si ni la masa ni la variedad dicen otra cosa. Las pantallas cuentan hasta lo ideal.',
  steps: 'Listas hacia atrás: la apertura cuenta desde la primera carga, el cambio desde el horno vacío.',
  stations: 'Lo que nadie toca se supone por la siguiente acción que alguien toca. Cargar y sacar los toca alguien.',
  screens: 'Tamaño, distancia, sonido y pedales son de cada pantalla y se ponen en ella.',
  save: 'Lo que va a cambiar, en palabras. Las cargas en marcha conservan sus tiempos.',
  versions: 'Cambios por venir, y cómo era la configuración antes.',
  file: 'Toda la configuración, hacia afuera y hacia adentro: una copia, otro local, o para quien prefiere escribir.',
}

const ENTITIES: { readonly [entity in Parameters<SetUpSentences['entity']>[0]]: string } = {
  profile: 'Local',
  hours: 'Horario',
  kettle: 'Olla',
  boards: 'Tablas',
  oven: 'Horno',
  mixer: 'Amasadora',
  cooler: 'Frío',
  doughRoom: 'Cuarto de masas',
  ingredient: 'Ingrediente',
  preparation: 'Preparación',
  formula: 'Fórmula',
  counter: 'Mostrador',
  demand: 'Lo que valen las piezas',
  specialDay: 'Día especial',
  baking: 'Qué carga y cuándo',
  windows: 'Tiempos',
  shelf: 'Piso',
  dough: 'Masa',
  topping: 'Cobertura',
  variety: 'Variedad',
  station: 'Puesto',
  person: 'Persona',
  step: 'Paso',
  weekday: 'Día',
}

const ORDER =
  'Ningún tiempo es más largo que el siguiente: más temprano, ideal, más tarde. El horneado entero dura más que su primer lado.'
const NAME = 'Otro en uso se llama igual. Póngale un nombre propio.'

/** Sentences of what would be right; a misfit without one is told as the core tells it. */
const MISFITS: Readonly<Record<string, string>> = {
  ...ES_DOUGH_MISFITS,
  ...ES_DEMAND_MISFITS,
  ...ES_BAKING_MISFITS,
  'hours/ovenReadyMinute': 'El horno está listo cuando abre el local, o antes.',
  'hours/closeMinute': 'El local cierra después de abrir, el mismo día.',
  'hours/changeoverFromMinute': 'El cambio empieza mientras el local está abierto.',
  'hours/changeoverToMinute': 'El cambio termina después de empezar y antes de cerrar.',
  'hours/secondMenu': 'Un segundo menú necesita las horas del cambio.',
  'windows/proof': ORDER,
  'windows/chill': ORDER,
  'windows/rack': ORDER,
  'windows/kettle': ORDER,
  'windows/boards': ORDER,
  'windows/firstSide': ORDER,
  'windows/bake': ORDER,
  'windows/cool': ORDER,
  'shelf/': 'El horno tiene al menos un piso en uso; una solera, un solo suelo.',
  'shelf/name': NAME,
  'shelf/pieces': 'En un piso caben 1000 piezas como mucho.',
  'dough/': 'Al menos una masa está en uso, y no más de las que caben.',
  'dough/name': NAME,
  'dough/route': 'Empieza donde esperan las piezas formadas: leudado, frío o carro. Termina en el horno.',
  'dough/windows': ORDER,
  'variety/': 'Al menos una variedad está en uso, y no más de las que caben.',
  'variety/name': NAME,
  'variety/flip': 'Lo que va sobre tabla se voltea para soltarlo. Que se voltee, o que vaya en charola.',
  'variety/topping': 'Una cobertura después de voltear necesita que se voltee.',
  'variety/toppingId': 'Su cobertura está en uso, y se dice cuándo se pone.',
  'variety/doughId': 'Su masa está en uso. Devuelva la masa, o retire también esta.',
  'variety/bakedOn': 'Una tabla necesita tablas: en el local y en el camino de su masa. Si no, charola.',
  'variety/windows': ORDER,
  'station/': 'Alguien toca cargar y alguien toca sacar.',
  'station/name': NAME,
  'ingredient/name': NAME,
  'preparation/name': NAME,
  'formula/name': NAME,
  'topping/name': NAME,
  'person/name': NAME,
  'step/name': NAME,
  'mixer/mostFlour': 'La harina máxima no es menos que la mínima.',
  'mixer/leastFlour': 'La harina mínima no es más que la máxima.',
  'weekday/hours': 'Horno listo, abrir, cambio, cerrar: en este orden, el mismo día.',
}

const SUMS: SumWords = {
  worth: (amount, percent) => `${amount} por quien se va sin lo suyo, ${percent} % llevan otra`,
  usual: (pieces) => `${pieces} piezas`,
  shelves: (count, pieces) => `${count} ${count === 1 ? 'piso' : 'pisos'} de ${pieces}`,
  floor: (boards) => `un suelo de ${boards} tablas`,
  kettle: (pieces, cycle) => `${pieces} piezas cada ${cycle}`,
  boards: (count, pieces) => `${count}, ${pieces} piezas en cada una`,
  count: (count) => String(count),
  steps: (opening, changeover) => `apertura ${opening} pasos, cambio ${changeover}`,
  nothing: 'sin decir',
  closed: 'cerrado',
  changeover: (from, to) => `cambio ${from} – ${to}`,
  toCome: (count) => `${count} por venir`,
  room: (mixer, cooler) =>
    [
      ...(mixer === null
        ? []
        : [`${mixer.leastFlour.thousandths / 1_000} – ${mixer.mostFlour.thousandths / 1_000} ${mixer.mostFlour.unit}`]),
      ...(cooler === null ? [] : [`${cooler.trays} bandejas`]),
    ].join(' · '),
}
