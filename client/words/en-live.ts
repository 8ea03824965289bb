import type { Unsure } from '../../shared-core/day/state.ts'
import type { AnswerParts } from './params.ts'
import type { AnswerWords, LiveWords, NoticeText, SaidConnection, SaidNotice, Speech } from './words.ts'

type Parts = AnswerParts & { readonly answers: AnswerWords }

export function enLive(speech: Speech, parts: Parts): LiveWords {
  return {
    connection: (connection) => connectionText(connection, parts),
    pending: (taps) => (taps === 0 ? '' : `${taps} ${taps === 1 ? 'tap' : 'taps'} waiting`),
    notice: (notice) => noticeText(notice, parts),
    unsure: (unsure) => unsureText(unsure, speech, parts),
    demo: (demo) => (demo === null ? '' : demo.handsOff ? 'Demo: an invented shop' : 'Demo: invented shop and crew'),
    clockError: (errorMs) => `seconds ±${(errorMs / 1_000).toFixed(1)} s`,
  }
}

function connectionText({ phase, sinceMs }: SaidConnection, { times }: Parts): string {
  switch (phase) {
    case 'connecting':
      return 'Looking for the shop…'
    case 'live':
      return ''
    case 'catching-up':
      return 'Back in contact – catching up'
    case 'away':
      return times.clock(sinceMs) === '' ? 'No contact' : `No contact ${times.since(sinceMs)} – counting on`
    case 'stale':
      return 'This page is too old: reload it'
    case 'outside':
      return 'This screen has not joined this shop'
  }
}

function noticeText(notice: SaidNotice, { answers, told }: Parts): NoticeText {
  switch (notice.kind) {
    case 'refused':
      return { title: `Not done: ${told.did({ type: notice.command.type })}`, text: answers.refusal(notice.refusal) }
    case 'ask':
      return {
        title: `To answer: ${told.did({ type: notice.command.type })}`,
        text: notice.asks.map((ask) => answers.ask(ask).question).join(' '),
      }
    case 'queue-full':
      return {
        title: 'No more taps until there is contact',
        text: `${notice.most} taps wait on this screen. Write down what happens until the link is back.`,
      }
    case 'not-saved':
      return {
        title: 'Taps are not kept on this device',
        text: 'Its storage is full or blocked. Do not reload this page until there is contact.',
      }
    case 'kept-aside':
      return {
        title: 'Taps of another shop are on this device',
        text: `${notice.commands} ${notice.commands === 1 ? 'tap waits' : 'taps wait'} until that shop is served here again. Putting this away drops them.`,
      }
    case 'left-behind':
      return {
        title: 'Taps of this device as another screen',
        text: `${notice.commands} ${notice.commands === 1 ? 'tap was' : 'taps were'} made here while this was a ${ROLES[notice.role]}. They stay on this device and go out when it is one again.`,
      }
    case 'fetched-anew':
      return {
        title: 'Fetched the state anew',
        text: 'This screen had reckoned something else than the shop. What you see now is right; taps are not lost.',
      }
  }
}

function unsureText({ what, atMs }: Unsure, { names }: Speech, { times, line, answers }: Parts): NoticeText {
  if (what.kind === 'presumed') {
    return {
      title: `${what.pieces} ${names.dough(what.doughId)}: ${PRESUMED[what.act]}`,
      text: `Taken as done ${times.at(atMs)}; nobody tapped it.`,
    }
  }
  if (what.kind === 'found') {
    return {
      title: `${what.pieces} ${names.dough(what.doughId)} more than the board knew`,
      text: `Booked as found ${times.at(atMs)}.`,
    }
  }
  const where = what.shelfId === null ? '' : `${line.shelf(what.shelfId)}: `
  return {
    title: `${where}${what.pieces} of at most ${what.most}`,
    text: `Taken ${times.at(atMs)}: ${answers.over(what.limit)}.`,
  }
}

const ROLES = { wall: 'wall', bench: 'bench', counter: 'counter', desk: 'desk' } as const

const PRESUMED = {
  pull: 'pulled?',
  dip: 'dipped?',
  lift: 'lifted?',
  board: 'boarded?',
  flip: 'flipped?',
} as const
