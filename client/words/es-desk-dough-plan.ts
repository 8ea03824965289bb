import type { PlanWords } from './desk-dough-plan.ts'
import type { Words } from './words.ts'

const pieces = (count: number) => `${count} ${count === 1 ? 'pieza' : 'piezas'}`
const mixes = (count: number) => `${count} ${count === 1 ? 'amasijo' : 'amasijos'}`

export function esPlan({ line }: Words): PlanWords {
  return {
    title: (date) => `Plan para el ${date}`,
    hint: 'Juntado por masa, menos lo que hay y sigue bueno ese día, en bandejas enteras, parejo en amasijos.',
    preview: 'Con los números como están escritos, sin guardar todavía.',
    nothing: 'Todavía no se quiere nada para ese día: escriba piezas, o copie otro día.',
    closedDay: 'Ese día el local cierra.',
    decideBy: (names, day, clock) => `Decidir ${line.list(names)} antes de: ${clock}, ${day}.`,
    decideLate: 'Esa hora ya pasó.',
    doughColumns: { dough: 'masa', shape: 'para formar', why: 'por qué' },
    reason: (code, count) => REASONS[code](Math.abs(count), count),
    over: (count) => `${count} más de lo que se quiere`,
    spare: (count) => `${count} formadas de más`,
    noFormula: (count) => `${pieces(count)} no se pueden planear: la masa no tiene fórmula o peso de pieza.`,
    mixesTitle: 'Amasijos',
    mixColumns: { mix: 'amasijo', flour: 'harina', dough: 'masa', gives: 'da' },
    formulaHead: (formula, count, flour, dough) => `${formula}: ${mixes(count)}, ${flour} de harina, ${dough} de masa`,
    mixedOn: (date) => `se amasa el ${date}`,
    mixedOnClosed: (date) => `se amasa el ${date}, con el local cerrado`,
    doughReason: (code, weight) =>
      ({
        pieces: `${weight} en piezas`,
        loss: `${weight} quedan en bol y divisora`,
        bags: `${weight} para completar una bolsa`,
      })[code],
    fits: (fits, least, most) =>
      ({
        fits: '',
        belowLeast: `Menos harina de la que la amasadora puede amasar (${least}).`,
        unequal: `Ningún número de amasijos iguales queda entre ${least} y ${most}.`,
      })[fits],
    mixName: (place) => `amasijo ${place}`,
    flourOf: (formula, place) => `${formula}, amasijo ${place}: harina`,
    fewerMixes: '− amasijo',
    moreMixes: '+ amasijo',
    fewerOf: (formula) => `${formula}: un amasijo menos`,
    moreOf: (formula) => `${formula}: un amasijo más`,
    asPlanned: 'Como estaba planeado',
    byHand: 'cambiado a mano',
    costs: (over, dough) => `${over} ${dough} más de lo planeado`,
    costsShort: (short, dough) => `${short} ${dough} menos de lo planeado`,
    costsNothing: 'las mismas piezas que el plan',
    mixerTime: (minutes, change) =>
      `${minutes} min de amasadora${change === 0 ? '' : ` (${change > 0 ? '+' : '−'}${Math.abs(change)} min)`}`,
    overMost: 'más de lo que la amasadora debe llevar',
    underLeast: 'menos de lo que la amasadora puede amasar',
    unreadable: 'Un campo marcado no es un peso mayor que cero.',
    use: 'Usar este plan',
    saveAndUse: 'Guardar y usar este plan',
    stands: (kind, begun) =>
      ({
        none: 'Todavía no hay amasijos planeados para ese día.',
        same: 'Es lo que está planeado.',
        earlierFormula: 'Está planeado, con una fórmula que cambió después: use el plan para pesar con la de ahora.',
        differs: 'Lo planeado difiere de esto: úselo para planear de nuevo lo que nadie empezó.',
      })[kind] + (begun === 0 ? '' : ` ${mixes(begun)} ya en marcha: ${begun === 1 ? 'queda' : 'quedan'}.`),
    toOrder: 'Al orden de amasado',
    toSheets: 'A las hojas de amasado',
  }
}

const REASONS: { readonly [code in Parameters<PlanWords['reason']>[0]]: (count: number, signed: number) => string } = {
  counter: (count) => `${count} para el mostrador`,
  orders: (count) => `+ ${count} pedidas`,
  boiled: (count) => `− ${count} ya hervidas`,
  loads: (count) => `+ ${count} más en las cargas planeadas`,
  chilled: (count) => `− ${count} en frío o leudando y todavía buenas`,
  begun: (count) => `− ${count} de amasijos en marcha`,
  earlier: (count) => `− ${count} que sobran de los días de antes`,
  trays: (count) => `+ ${count} a bandejas enteras`,
  bags: (count, signed) => `${signed < 0 ? '−' : '+'} ${count} a bolsas enteras`,
}
