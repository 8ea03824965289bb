import type { Unsure } from '../../shared-core/day/state.ts'
import type { AnswerParts } from './params.ts'
import type { AnswerWords, LiveWords, NoticeText, SaidConnection, SaidNotice, Speech } from './words.ts'

type Parts = AnswerParts & { readonly answers: AnswerWords }

export function esLive(speech: Speech, parts: Parts): LiveWords {
  return {
    connection: (connection) => connectionText(connection, parts),
    pending: (taps) => (taps === 0 ? '' : `${taps} ${taps === 1 ? 'toque' : 'toques'} por enviar`),
    notice: (notice) => noticeText(notice, parts),
    unsure: (unsure) => unsureText(unsure, speech, parts),
    demo: (demo) => (demo === null ? '' : demo.handsOff ? 'Demo: local inventado' : 'Demo: local y equipo inventados'),
    clockError: (errorMs) => `segundos ±${(errorMs / 1_000).toFixed(1)} s`,
  }
}

function connectionText({ phase, sinceMs }: SaidConnection, { times }: Parts): string {
  switch (phase) {
    case 'connecting':
      return 'Buscando el local…'
    case 'live':
      return ''
    case 'catching-up':
      return 'Hay contacto otra vez: poniéndose al día'
    case 'away':
      return times.clock(sinceMs) === '' ? 'Sin contacto' : `Sin contacto ${times.since(sinceMs)}: sigue contando`
    case 'stale':
      return 'Esta página es muy vieja: recárguela'
    case 'outside':
      return 'Esta pantalla no está unida a este local'
  }
}

function noticeText(notice: SaidNotice, { answers, told }: Parts): NoticeText {
  switch (notice.kind) {
    case 'refused':
      return { title: `No se hizo: ${told.did({ type: notice.command.type })}`, text: answers.refusal(notice.refusal) }
    case 'ask':
      return {
        title: `Por contestar: ${told.did({ type: notice.command.type })}`,
        text: notice.asks.map((ask) => answers.ask(ask).question).join(' '),
      }
    case 'queue-full':
      return {
        title: 'No se toma nada más hasta que haya contacto',
        text: `Hay ${notice.most} toques esperando en esta pantalla. Anote lo que pase hasta que vuelva el contacto.`,
      }
    case 'not-saved':
      return {
        title: 'Este aparato no guarda los toques',
        text: 'Su memoria está llena o bloqueada. No recargue la página hasta que haya contacto.',
      }
    case 'kept-aside':
      return {
        title: 'En este aparato hay toques de otro local',
        text: `${notice.commands} ${notice.commands === 1 ? 'toque espera' : 'toques esperan'} a que vuelva ese local. Al quitar este aviso se pierden.`,
      }
    case 'left-behind':
      return {
        title: 'Toques de este aparato como otra pantalla',
        text: `${notice.commands} ${notice.commands === 1 ? 'toque se hizo' : 'toques se hicieron'} aquí cuando esto era ${ROLES[notice.role]}. Quedan en este aparato y salen cuando vuelva a serlo.`,
      }
    case 'fetched-anew':
      return {
        title: 'Se trajo todo de nuevo',
        text: 'Esta pantalla llevaba otra cuenta que el local. Lo que ve ahora es lo correcto; no se perdió ningún toque.',
      }
  }
}

function unsureText({ what, atMs }: Unsure, { names }: Speech, { times, line, answers }: Parts): NoticeText {
  if (what.kind === 'presumed') {
    return {
      title: `${what.pieces} ${names.dough(what.doughId)}: ${PRESUMED[what.act]}`,
      text: `Se dio por hecho ${times.at(atMs)}; nadie lo tocó.`,
    }
  }
  if (what.kind === 'found') {
    return {
      title: `${what.pieces} ${names.dough(what.doughId)} más de lo que sabía la pizarra`,
      text: `Anotado como encontrado ${times.at(atMs)}.`,
    }
  }
  const where = what.shelfId === null ? '' : `${line.shelf(what.shelfId)}: `
  return {
    title: `${where}${what.pieces} de ${what.most} como máximo`,
    text: `Se tomó ${times.at(atMs)}: ${answers.over(what.limit)}.`,
  }
}

const ROLES = { wall: 'la pared', bench: 'la línea', counter: 'el mostrador', desk: 'el escritorio' } as const

const PRESUMED = {
  pull: '¿se trajo?',
  dip: '¿se hirvió?',
  lift: '¿se levantó?',
  board: '¿se pasó a tablas?',
  flip: '¿se volteó?',
} as const
