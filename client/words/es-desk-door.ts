import type { RefusedKind } from '../../shared-core/live/devices.ts'
import type { CopiesWords, DeskDoorWords, DevicesWords, LetInWords, RefusedWords, TokensWords } from './desk-door.ts'
import type { TimeWords, Words } from './words.ts'

export function esDeskDoor({ times }: Words): DeskDoorWords {
  return {
    open: 'Cualquiera en esta red puede elegir una pantalla, y así leer y tocar todo.',
    closeIt: 'Para que solo entren los aparatos que este escritorio deja entrar, inicie el local sin --open:',
    failed: 'No funcionó.',
    refusals: {
      'last-desk':
        'Es el único escritorio: después nadie podría dejar entrar otro aparato. Deje entrar antes otro escritorio.',
      gone: 'Ya no está: otro escritorio fue más rápido o se le acabó el tiempo.',
      'too-many': 'Ya hay demasiados. Retire códigos o saque aparatos que no se necesiten.',
    },
    noContact: 'Sin contacto con el local. No se cambió nada.',
    devices: DEVICES,
    letIn: LET_IN,
    tokens: TOKENS,
    refused: refused(),
    copies: copies(times),
  }
}

const DEVICES: DevicesWords = {
  columns: { seen: 'estado', ends: 'hasta' },
  linked: 'conectado',
  notYet: 'no se ha visto',
  endless: 'sin fin',
  calendar: 'Calendario de pedidos',
  change: 'Cambiar',
  name: 'Nombre',
  role: 'Qué es',
  station: 'Puesto',
  save: 'Guardar',
  cancel: 'Dejarlo así',
  showOut: 'Sacarlo',
  showOutAsk: (name) =>
    `¿Sacar a ${name}? Se detiene enseguida. Los toques que no envió quedan en él; para volver necesita un código nuevo.`,
  showOutYes: 'Sacarlo',
  showOutNo: 'Que se quede',
  movedHint: 'Va solo a su página nueva. Los toques que no envió quedan en él como lo que era.',
}

const LET_IN: LetInWords = {
  title: 'Dejar entrar otra pantalla',
  lead: 'Elija qué es y cómo se llama. El código vale unos minutos y deja entrar a un aparato.',
  make: 'Hacer un código',
  onDevice: 'En el aparato nuevo',
  how: (address) => `Abra ${address} y escriba estas cifras, o apunte su cámara al código.`,
  digits: (code) => `Código ${[...code].join(' ')}`,
  takeBack: 'Retirar el código',
  over: 'Este código ya no vale: era muy viejo o se retiró.',
  joined: (name) => `${name} ya entró.`,
  another: 'Dejar entrar otra',
  others: 'Otros códigos que todavía valen',
  there: 'Aquí cada aparato entra con un código propio. El escritorio lo hace en',
}

const TOKENS: TokensWords = {
  title: 'Cajas, sensores y programas',
  lead: 'Lo que no es una pantalla entra con una llave propia y puede lo mismo que la pantalla de su papel. Dé una a cada aparato, para poder sacar a cada uno por separado.',
  name: 'Cómo se llama',
  nameHint: 'p. ej. Caja',
  role: 'Puede lo mismo que esta pantalla',
  days: 'Vale por',
  daysChoice: (days) => (days === null ? 'sin fin' : `${days} días`),
  make: 'Hacer una llave',
  once: (name) => `La llave para ${name}. Se muestra solo esta vez: cópiela ahora.`,
  token: 'Llave',
  example: 'Por ejemplo:',
  copy: 'Copiar',
  copied: 'Copiada',
  putAway: 'Ya la tengo: quitarla',
}

const KINDS: { readonly [kind in RefusedKind]: readonly [one: string, many: string] } = {
  'no-token': ['intento sin haberse unido', 'intentos sin haberse unido'],
  forged: ['llave que no es nuestra', 'llaves que no son nuestras'],
  revoked: ['intento de un aparato que se sacó', 'intentos de aparatos que se sacaron'],
  expired: ['intento de un aparato que faltó demasiado', 'intentos de aparatos que faltaron demasiado'],
  'foreign-host': ['intento con un nombre que no es de este local', 'intentos con un nombre que no es de este local'],
  'foreign-origin': ['intento de una página de otra parte', 'intentos de una página de otra parte'],
  'wrong-code': ['código equivocado', 'códigos equivocados'],
  'not-its-role': ['intento de algo que su papel no permite', 'intentos de algo que un papel no permite'],
  'too-many': ['pedido más de los que un aparato puede hacer', 'pedidos más de los que un aparato puede hacer'],
  flooding: ['pantalla desconectada por mandar demasiado', 'pantallas desconectadas por mandar demasiado'],
  malformed: ['mensaje que no se puede leer', 'mensajes que no se pueden leer'],
}

function refused(): RefusedWords {
  return {
    title: 'No se dejó entrar',
    none: 'No se rechazó nada.',
    lead: 'Unos pocos son un código mal escrito o una pestaña vieja. Muchos de una dirección que no conoce: busque ese aparato y cambie la clave del wifi.',
    // «a. m.» already ends in a full stop.
    since: (at) => `Contado desde ${at}${at.endsWith('.') ? '' : '.'}`,
    columns: { what: 'qué', last: 'último', from: 'de' },
    times: (kind, count) => `${count} ${KINDS[kind][count === 1 ? 0 : 1]}`,
  }
}

function copies(times: TimeWords): CopiesWords {
  return {
    title: 'Copias de seguridad',
    none: 'Todavía no hay copia.',
    copied: (ms, missing) =>
      missing === 0
        ? `Copiado hace ${times.span(ms)}, hasta el último toque.`
        : `Copiado hace ${times.span(ms)}; ${missing === 1 ? '1 acto posterior no está' : `${missing} actos posteriores no están`} todavía.`,
    folder: 'Las copias están en',
    sameDrive:
      'Es el mismo disco en el que está el local: si se daña, se dañan también las copias. Una carpeta en otro disco las conserva; inicie con ella:',
    trouble: 'La última copia no funcionó:',
    archives: 'Guardadas por día',
    noArchives: 'Todavía ninguna por día.',
    columns: { when: 'de', file: 'archivo', size: 'tamaño', acts: 'actos' },
    bytes: bytesText,
    restoreTitle: 'Para volver a poner una',
    restore:
      'Detenga el local, dé esta orden con la carpeta del local en lugar de FOLDER e inícielo de nuevo. Toma la copia buena más nueva y guarda aparte el diario actual:',
    restoreOne: 'O una de las guardadas por día:',
    exportIt: 'Todo lo que pasó aquí, en un archivo (JSON Lines)',
  }
}

function bytesText(bytes: number): string {
  return bytes < 1_000_000 ? `${Math.ceil(bytes / 1_000)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`
}
