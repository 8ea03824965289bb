import type { DeskWords } from './desk.ts'
import type { WhatIfWords } from './desk-plan.ts'
import { costText } from './es-desk-plan.ts'

/** What another shop would do with the same day. */
export function esWhatIf({ times }: DeskWords): WhatIfWords {
  return {
    title: 'Qué pasaría',
    hint: 'El mismo día con una cosa distinta, planeado de nuevo. Preguntar no cambia nada en el local.',
    changes: {
      shelf: 'Un piso más',
      kettle: 'Una olla más rápida',
      boards: 'Más tablas',
      opening: 'Abrir antes',
      changeover: 'El cambio a otra hora',
      order: 'Un pedido más',
      people: 'Menos gente',
    },
    amounts: {
      shelf: null,
      kettle: 'segundos por tanda',
      boards: 'tablas más',
      opening: 'minutos antes',
      changeover: 'minutos después (− antes)',
      people: 'personas menos',
    },
    orderOf: 'De',
    orderPieces: 'Piezas',
    orderAt: 'Para las',
    ask: 'Calcular',
    asking: 'Calculando…',
    failed: 'No se pudo calcular. Pruebe otra vez cuando haya contacto.',
    columns: { figure: '', before: 'como es', after: 'con eso', difference: 'diferencia' },
    rows: {
      profit: 'dinero esperado',
      lost: 'se piden en vano',
      missing: 'faltan en pedidos',
      left: 'quedan al cierre',
      firstDip: 'primera tanda',
      crew: 'horas del equipo',
      age: 'edad al venderse',
    },
    unreadable: 'Escriba un número que tenga sentido para esto.',
    answer: costText,
    hours: (minutes) => times.span(minutes * 60_000),
    minutes: (minutes) => `${minutes} min`,
  }
}
