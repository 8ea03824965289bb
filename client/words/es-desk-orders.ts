import type { DayOrderWords, DeskOrderSentences, PackingWords, PickingWords, RiskWords } from './desk-orders.ts'
import type { Words } from './words.ts'

export function esDeskOrders({ line }: Words): DeskOrderSentences {
  return {
    pagesName: 'Páginas de los pedidos',
    pages: {
      day: 'Por día',
      standing: 'Pedidos fijos',
      packing: 'Empaque',
      names: 'Nombres',
      files: 'Archivos y calendario',
    },
    waiting: 'Buscando los pedidos…',
    noContact: 'Ahora no hay contacto con el servidor. Vuelve solo.',
    dates: { name: 'Días con pedidos', goTo: 'Otro día', go: 'Ver' },
    day: day(line),
    risk: RISK,
    packing: PACKING,
    picking: PICKING,
  }
}

function day(line: Words['line']): DayOrderWords {
  return {
    take: 'Tomar un pedido',
    search: 'Marca o nombre',
    show: 'Ver',
    filter: { all: 'todos', risk: 'en riesgo', pickUp: 'lo recogen', delivery: 'a domicilio', here: 'espera aquí' },
    none: (date) => `No hay pedidos para ${date}.`,
    noneSuch: 'Ningún pedido es así.',
    total: (orders, pieces) => `${orders} ${orders === 1 ? 'pedido' : 'pedidos'}, ${line.pieces(pieces)}`,
    more: (orders) => `Ver ${orders} más`,
    columns: { due: 'para las', mark: 'de', what: 'qué', way: 'cómo', paid: 'pago', kept: 'guardado' },
    keptOf: (kept, pieces) => `${kept} de ${pieces}`,
    madeOf: (made, items) => `hecho ${made} de ${items}`,
    standing: 'fijo',
    isRisk: 'tomado con riesgo',
    overdue: 'atrasado',
    change: 'Cambiar',
    cancel: 'Anular',
    handedOver: 'Entregado',
    actOf: (act, mark) => `${act}: ${mark}`,
    sureToCancel: (mark) => `¿Anular ${mark}? Lo apartado vuelve a la venta.`,
    yesCancel: 'Sí, anularlo',
    noCancel: 'No',
    leaveOut: 'Este día no',
    sums: 'Todo junto',
    sumsHint: 'Lo surtido se vuelve una variedad al juntarlo.',
    sumColumns: { variety: 'variedad', ordered: 'pedido', kept: 'guardado' },
    run: (name) => `reparto ${name}`,
  }
}

const RISK: RiskWords = {
  title: (orders) => `En riesgo: ${orders} ${orders === 1 ? 'pedido' : 'pedidos'}`,
  hint: 'Según lo que hay, lo que está en el horno y lo planeado; primero lo que vence antes.',
  missing: (mark, due, what) => `${mark}, para las ${due}: faltan ${what}`,
  nothingSaves: 'Nada de lo que sabe el tablero lo salva: llámeles.',
}

const PACKING: PackingWords = {
  print: 'Imprimir',
  lead: 'Una hoja por reparto, con sus paradas en orden. Lo que ya está se marca en el papel.',
  none: (date) => `No se entrega nada el ${date}.`,
  noRun: 'A domicilio, en ningún reparto',
  leaves: (clock) => `sale ${clock}`,
  packFrom: (clock) => `empacar desde ${clock}`,
  boxes: (boxes) => `${boxes} ${boxes === 1 ? 'caja' : 'cajas'}`,
  outBy: (clock) => `fuera del horno a más tardar ${clock}`,
  isLate: 'después de su hora',
  arrives: (clock) => `llega ${clock}`,
  columns: { done: '✓', stop: 'parada', mark: 'de', what: 'qué', boxes: 'cajas' },
  together: 'Todo junto',
  signed: 'Empacado por',
}

const PICKING: PickingWords = {
  title: 'Lista para juntar',
  print: 'Imprimir la lista para juntar',
  lead: 'Los pedidos en el orden en que vencen.',
  columns: { done: '✓', due: 'para las', mark: 'de', what: 'qué', way: 'cómo' },
}
