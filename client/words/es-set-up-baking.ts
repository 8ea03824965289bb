import type { BakingSetUpWords } from './set-up-baking.ts'
import type { SetUpFields } from './set-up-fields.ts'

export const ES_BAKING_FIELDS: Pick<SetUpFields, 'baking'> = {
  baking: {
    advice: 'Aconsejar qué carga y cuándo',
    changeGainCents: 'Cambiar la próxima carga por no menos de',
    stalePercentPerHour: 'Una pieza pierde por hora, % de su precio',
    carryPercent: 'Guardada en frío vale mañana, % de su costo',
    boardWaitMs: 'Lo más en tablas antes del horno',
    unitPieces: 'Se ponen en tablas de a',
    toleranceMs: 'Horneados de una carga difieren hasta',
    door: 'En la puerta del horno',
    turnMs: 'De un piso en la puerta al siguiente',
    people: 'Personas trabajando',
    showUntilMinute: 'A la vista hasta',
    contactCents: 'Antes de un alérgeno por hasta, cada pieza',
  },
}

export const ES_BAKING: BakingSetUpWords = {
  does: {
    advice: 'Apagado: las cargas son las de su propia lista, y el tablero no añade ninguna.',
    changeGainCents:
      'Por un plan apenas mejor no vale la pena dar vuelta. La próxima carga queda como estaba, salvo que otra gane al menos esto.',
    stalePercentPerHour:
      'Lo que cuesta una hora entre la rejilla y el cliente. Más significa cargas más chicas y más seguidas.',
    carryPercent:
      'Una pieza que hoy no se hierve no se pierde mientras dure su plazo. Más significa hervir menos al final del día.',
    boardWaitMs:
      'Las piezas que esperan más se secan arriba y se pegan abajo. La primera tanda de una carga no es antes que esto.',
    unitPieces: 'Piezas que van siempre juntas: media docena, o 1 donde las tablas no llevan medias docenas enteras.',
    toleranceMs:
      'Variedades que se hornean más o menos igual pueden compartir piso. Más significa pisos más llenos y horneado menos parejo.',
    door: 'Lo que un par de manos necesita para una carga. Con las tres en 0, las manos no limitan.',
    contactCents:
      'Las variedades que no deben tocar un alérgeno se hierven antes, mientras eso no cueste más que esto por pieza.',
  },
  heads: {
    change: 'Consejo',
    fresh: 'Frescura',
    line: 'En la línea',
    hands: 'Manos en la puerta',
    people: 'Personas trabajando',
    show: 'A la vista',
    contact: 'Alérgenos',
  },
  door: { loadMs: 'Cargar', flipMs: 'Voltear', outMs: 'Sacar' },
  people: {
    from: 'Desde',
    count: 'Personas',
    add: 'Añadir una hora',
    remove: (clock) => `Quitar ${clock}`,
    none: 'Nadie lo ha dicho: las personas no limitan el plan.',
    hint: 'Cuántas pueden trabajar en la línea desde cuándo, hasta la siguiente hora de la lista.',
    line: (people, clock) => `${people} desde ${clock}`,
  },
  showHint:
    'Piezas que deben estar al abrir, y hasta la hora de «A la vista hasta» donde se dice una, por pocas que se vayan a pedir.',
  avoidsHint:
    'Se planea antes de que estos toquen agua, tablas, bandejas, pala o piedra, donde se puede. No es una promesa.',
  avoidsItself: (allergens) => `Ella misma contiene ${allergens}: ahí esto no cambia nada.`,
  emptyByHint: 'Donde este piso pasa al segundo menú antes que los demás.',
  emptyByLate: 'A esa hora ya no hay bagels en todo el horno: esta hora no cambia nada.',
  sums: { on: 'aconsejadas', off: 'sin consejo: la lista propia' },
}

export const ES_BAKING_MISFITS: Readonly<Record<string, string>> = {
  'baking/people': 'Horas en orden, cada una una vez.',
  'baking/showUntilMinute': 'Una hora después de abrir y antes de cerrar.',
  'shelf/emptyByMinute': 'Una hora después de que el horno esté listo. Un piso que nunca hornea se retira.',
}
