import type { AskCode, OverLimit } from '../../shared-core/day/answers.ts'
import { capitalised, joined } from './joined.ts'
import type { AnswerParts, DoughRoomRefusal, OrderRefusal, RefusalSentences, Said, Sentences } from './params.ts'
import { saidIn } from './params.ts'
import type { AnswerWords, Question, Speech } from './words.ts'

export function esAnswers(speech: Speech, parts: AnswerParts): AnswerWords {
  const refusals: RefusalSentences = { ...refusalsWith(parts), ...doughRoomRefusals(parts), ...ORDER_REFUSALS }
  const asks = asksWith(parts)
  return {
    refusal: (refusal) => refusals[refusal.code](saidIn(refusal, speech, parts)),
    ask: (ask) => asks[ask.code](saidIn(ask, speech, parts)),
    over: (limit) => OVER[limit],
  }
}

const OVER: { readonly [limit in OverLimit]: string } = {
  shelf: 'más de lo que cabe en el piso',
  kettle: 'más de lo que cabe en la olla',
  boards: 'más tablas de las que hay libres',
  'too-early': 'antes de su tiempo',
  'too-late': 'después de su tiempo',
}

function refusalsWith({ times }: AnswerParts): Omit<RefusalSentences, DoughRoomRefusal | OrderRefusal> {
  const when = ({ atMs }: Said) => (atMs === null ? '' : ` ${times.at(atMs)}`)
  return {
    'no-set-up': () => 'El local aún no tiene configuración. Cárguela primero en el escritorio.',
    'unknown-dough': () => 'Esa masa no está en la configuración. Mire la lista otra vez.',
    'unknown-variety': () => 'Esa variedad no está en la configuración. Mire la lista otra vez.',
    'unknown-shelf': () => 'Ese piso no está en la configuración. Mire la lista otra vez.',
    'unknown-batch': () => 'Esas piezas ya no están en la línea.',
    'unknown-load': () => 'Esa carga ya no está en el horno.',
    'unknown-keep': () => 'Ya no hay nada apartado con eso: se entregó o se liberó.',
    'unknown-planned': () => 'La lista de cargas cambió; esa carga ya no está.',
    'unknown-unsure': () => 'Eso ya quedó aclarado.',
    retired: ({ shelf, dough, variety, name }) =>
      `${capitalised(shelf ?? variety ?? dough ?? name ?? 'eso')} está fuera de uso. Actívelo en el escritorio o elija otro.`,
    'already-loaded': (said) =>
      said.shelf === null ? 'Esa carga ya está dentro.' : `Ya está hecho: ${said.shelf}, cargado${when(said)}.`,
    'already-flipped': ({ shelf }) =>
      shelf === null ? 'Esa carga ya se volteó.' : `Ya está hecho: ${shelf}, volteado.`,
    'already-out': ({ shelf }) =>
      shelf === null ? 'Esa carga ya salió del horno.' : `Ya está hecho: ${shelf}, fuera del horno.`,
    'already-moved': ({ stage }) => (stage === null ? 'Ya está hecho.' : `Ya se movieron: están ${stage}.`),
    'already-confirmed': () => 'Ya está confirmado.',
    'already-open': ({ label }) => `El día ya está abierto${label === null ? '' : `: ${times.date(label)}`}.`,
    'nothing-to-flip': ({ shelf }) => `En ${shelf ?? 'ese piso'} no hay nada que voltear. Sáquelo cuando esté listo.`,
    'too-few': (said) => `Solo hay ${said.number('pieces')}. Ponga un número menor.`,
    'not-on-route': ({ dough, stage }) =>
      `${dough ?? 'Esa masa'} no pasa por ahí${stage === null ? '' : ` (${stage})`}. Su ruta está en la configuración.`,
    'same-place': () => 'Ya están ahí.',
    'day-not-open': () => 'No hay ningún día abierto. Lo abre el primer toque de la mañana.',
    'take-back-unknown': () => 'Pasó demasiado tiempo para deshacerlo.',
    'take-back-changed-since': ({ did, atMs }) =>
      `No se puede deshacer: después vino ${joined(atMs === null ? '' : times.clock(atMs), did ?? 'algo')}. Deshaga eso primero.`,
    'take-back-never': ({ did }) =>
      `Esto no se puede deshacer${did === null ? '' : ` (${did})`}. Corríjalo con el paso siguiente.`,
    'set-up-mismatch': () => 'Esto no va con la configuración del local. Vuelva a cargarla y repita el cambio.',
    'unknown-step': () => 'La configuración no tiene ese paso. Mire la lista de nuevo.',
    'unknown-person': () => 'La configuración no tiene a nadie con ese nombre. Mire la lista de nuevo.',
    'unknown-note': () => 'Esta nota ya se borró.',
    'unknown-set-up': () => 'Este cambio previsto ya no está.',
    'cannot-reopen': () => 'Este día no se puede reabrir: el siguiente ya empezó, o se cerró hace demasiado.',
    'no-changeover': () => 'La configuración no tiene cambio de horno. Sus horas se dan en el escritorio.',
    'nothing-due': () => 'Todavía no hay nada que poner en vigor.',
    'too-many': (said) => `Ya hay ${said.number('most')}, y no caben más. Borre uno primero.`,
    'not-your-role': () => 'Esta pantalla no puede hacer eso. Use la de la línea o el escritorio.',
    'bad-command': () => 'La pizarra no entendió este toque. Recargue la página e intente otra vez.',
    internal: () => 'Algo falló en la pizarra; no se cambió nada. Intente otra vez.',
  }
}

function doughRoomRefusals({ times }: AnswerParts): Pick<RefusalSentences, DoughRoomRefusal> {
  return {
    'unknown-formula': () => 'Esa fórmula no está en la configuración. Mire la lista otra vez.',
    'unknown-mix': () => 'Ese amasijo ya no está: se descartó o su día ya pasó.',
    'unknown-ingredient': () => 'Ese ingrediente no está en la configuración. Mire la lista otra vez.',
    'unknown-preparation': () => 'Ese prefermento o remojo no está en la configuración. Mire la lista otra vez.',
    'unknown-build': () => 'Ese prefermento o remojo ya se usó o se retiró.',
    'other-formula': ({ dough, name }) =>
      `${dough ?? 'Esa masa'} no sale de la fórmula${name === null ? '' : ` ${name}`}. Elija un amasijo de su fórmula o cámbiela en la configuración.`,
    'unknown-line': () => 'La hoja de amasijo no tiene esa línea. Mire la hoja otra vez.',
    'mix-begun': () => 'Ese amasijo ya empezó y no se puede descartar. Si no sirve, termínelo como echado a perder.',
    'mix-not-begun': () => 'Ese amasijo aún no empezó. Descártelo del plan.',
    'mix-ended': () => 'Ese amasijo ya terminó. Si queda masa, deshaga su final.',
    'not-of-formula': ({ name }) =>
      `${name ?? 'Esa fórmula'} no lleva fermentación en bloque en la configuración. Elija otra etapa.`,
    'date-over': ({ label }) =>
      `${label === null ? 'Ese día' : capitalised(times.date(label))} ya pasó. Dé hoy o un día por venir.`,
    'date-too-far': ({ label }) =>
      `${label === null ? 'Ese día' : capitalised(times.date(label))} está a más de un año. Dé un día más cercano.`,
    'no-piece-weight': ({ dough }) =>
      `La configuración no dice cuánto pesa una pieza de ${dough ?? 'esa masa'}. Dé antes su peso en el escritorio.`,
  }
}

const ORDER_REFUSALS: Pick<RefusalSentences, OrderRefusal> = {
  'unknown-order': () => 'Este pedido ya no está abierto: se entregó o se anuló.',
  'unknown-standing': () => 'Este pedido fijo ya se terminó.',
  'unknown-run': () => 'La configuración no tiene ese reparto. Mire otra vez la lista.',
  'unknown-menu-item': () => 'La carta de la configuración no tiene eso. Mire otra vez la lista.',
  'unknown-portion': () => 'La configuración no tiene esa porción. Mire otra vez la lista.',
  'order-empty': () => 'El pedido está vacío. Diga primero qué se quiere.',
  'order-nothing-left': () => 'Sin todas esas no queda ninguna variedad para el surtido. Deje alguna.',
  'order-when': () => 'Diga para cuándo es el pedido. Solo quien espera en el mostrador no necesita hora.',
  'order-known': ({ mark }) =>
    `Este pedido ya había llegado${mark === null ? '' : `: es el ${mark}`}. No se tomó dos veces.`,
  'which-bagel': () => 'Diga sobre qué bagel se prepara.',
  'details-not-written': () =>
    'El nombre o la nota no se pudo escribir en el disco del servidor; el pedido no se tomó. Intente otra vez, o tómelo sin ellos.',
}

function asksWith({ times }: AnswerParts): Sentences<AskCode, Question> {
  return {
    'old-tap': ({ tappedAtMs }) => ({
      question: `Este toque es de hace mucho, sin contacto${tappedAtMs === null ? '' : `, ${times.at(tappedAtMs)}`}. ¿Todavía vale?`,
      yes: 'Sí, vale',
      no: 'No, descartar',
    }),
    'far-count': (said) => ({
      question: `${said.variety ?? 'La pizarra'}: se contaron ${said.number('pieces')}, se conocían ${said.number('known')}. ¿Está bien la cuenta?`,
      yes: 'Sí, así es',
      no: 'No, contar otra vez',
    }),
    'line-not-empty': (said) => ({
      question: `Quedan ${said.pieces()} en la olla, en tablas o en el horno. ¿Cerrar el día de todos modos?`,
      yes: 'Sí, cerrar el día',
      no: 'No, todavía no',
    }),
    'orders-open': (said) => ({
      question: `${said.number('orders') === 1 ? 'Un pedido del día no se ha entregado' : `${said.number('orders')} pedidos del día no se han entregado`}. ¿Cerrar el día, como si nadie hubiera venido?`,
      yes: 'Sí, cerrar el día',
      no: 'No, todavía no',
    }),
    'retires-in-use': (said) => ({
      question: `${stillUsed(said)} ¿Retirarlo de todos modos?`,
      yes: 'Sí, retirar',
      no: 'No, dejarlo en uso',
    }),
    'loses-planned': (said) => ({
      question: `${said.number('count') === 1 ? 'Un cambio planeado ya no cabría y se descartaría' : `${said.number('count')} cambios planeados ya no cabrían y se descartarían`}. ¿Cambiar de todos modos?`,
      yes: 'Sí, descartar el plan',
      no: 'No, dejarlo como está',
    }),
  }
}

/** What is to be retired and is there or ordered. @example "Hay 12 piezas de Ajonjolí, y 2 pedidos lo nombran." */
function stillUsed(said: Said): string {
  const [name, pieces, orders] = [said.name ?? 'esto', said.number('pieces'), said.number('orders')]
  const told = orders === 1 ? '1 pedido lo nombra' : `${orders} pedidos lo nombran`
  if (orders === 0) return `Hay ${said.pieces()} de ${name}.`
  return pieces === 0 ? `${name}: ${told}.` : `Hay ${said.pieces()} de ${name}, y ${told}.`
}
