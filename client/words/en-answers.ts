import type { AskCode, OverLimit } from '../../shared-core/day/answers.ts'
import { capitalised, joined } from './joined.ts'
import type { AnswerParts, DoughRoomRefusal, OrderRefusal, RefusalSentences, Said, Sentences } from './params.ts'
import { saidIn } from './params.ts'
import type { AnswerWords, Question, Speech } from './words.ts'

export function enAnswers(speech: Speech, parts: AnswerParts): AnswerWords {
  const refusals: RefusalSentences = { ...refusalsWith(parts), ...doughRoomRefusals(parts), ...ORDER_REFUSALS }
  const asks = asksWith(parts)
  return {
    refusal: (refusal) => refusals[refusal.code](saidIn(refusal, speech, parts)),
    ask: (ask) => asks[ask.code](saidIn(ask, speech, parts)),
    over: (limit) => OVER[limit],
  }
}

const OVER: { readonly [limit in OverLimit]: string } = {
  shelf: 'more than the shelf takes',
  kettle: 'more than the kettle takes',
  boards: 'more boards than are free',
  'too-early': 'earlier than the window',
  'too-late': 'later than the window',
}

function refusalsWith({ times }: AnswerParts): Omit<RefusalSentences, DoughRoomRefusal | OrderRefusal> {
  const when = ({ atMs }: Said) => (atMs === null ? '' : ` ${times.at(atMs)}`)
  return {
    'no-set-up': () => 'The shop has no set-up yet. Load one at the desk first.',
    'unknown-dough': () => 'The set-up has no such dough. Look at the list again.',
    'unknown-variety': () => 'The set-up has no such variety. Look at the list again.',
    'unknown-shelf': () => 'The set-up has no such shelf. Look at the list again.',
    'unknown-batch': () => 'These pieces are not on the line any more.',
    'unknown-load': () => 'This load is not in the oven any more.',
    'unknown-keep': () => 'Nothing is kept under that any more: it was handed over or released.',
    'unknown-planned': () => 'The load list was replaced; this load is not on it.',
    'unknown-unsure': () => 'This was settled already.',
    retired: ({ shelf, dough, variety, name }) =>
      `${capitalised(shelf ?? variety ?? dough ?? name ?? 'that')} is retired. Bring it back into use at the desk, or take another.`,
    'already-loaded': (said) =>
      said.shelf === null ? 'This load is in already.' : `Already done: ${said.shelf} was loaded${when(said)}.`,
    'already-flipped': ({ shelf }) => `Already done: ${shelf ?? 'this load'} was flipped.`,
    'already-out': ({ shelf }) => `Already done: ${shelf ?? 'this load'} came out.`,
    'already-moved': ({ stage }) => (stage === null ? 'Already done.' : `Already moved: they are ${stage}.`),
    'already-confirmed': () => 'Already confirmed.',
    'already-open': ({ label }) => `The day is open already${label === null ? '' : `: ${times.date(label)}`}.`,
    'nothing-to-flip': ({ shelf }) => `Nothing on ${shelf ?? 'this shelf'} is flipped. Take it out when it is done.`,
    'too-few': (said) => `There are only ${said.number('pieces')}. Give a smaller number.`,
    'not-on-route': ({ dough, stage }) =>
      `${dough ?? 'This dough'} does not go that way${stage === null ? '' : ` (${stage})`}. Its route is in the set-up.`,
    'same-place': () => 'They are there already.',
    'day-not-open': () => 'No day is open. The first act of a morning opens it.',
    'take-back-unknown': () => 'That is too long ago to take back.',
    'take-back-changed-since': ({ did, atMs }) =>
      `Cannot be taken back: after it came ${joined(atMs === null ? '' : times.clock(atMs), did ?? 'something')}. Take that back first.`,
    'take-back-never': ({ did }) =>
      `This cannot be taken back${did === null ? '' : ` (${did})`}. Put it right with the next act.`,
    'set-up-mismatch': () =>
      'This does not fit the set-up that the shop has. Load the set-up anew and change it again.',
    'unknown-step': () => 'The set-up has no such step. Look at the list again.',
    'unknown-person': () => 'The set-up has nobody of that name. Look at the list again.',
    'unknown-note': () => 'This note was cleared already.',
    'unknown-set-up': () => 'This planned change is not there any more.',
    'cannot-reopen': () => 'This day cannot be reopened: the next one has begun, or it was closed too long ago.',
    'no-changeover': () => 'The set-up has no changeover. Its hours can be given at the desk.',
    'nothing-due': () => 'There is nothing to take into effect yet.',
    'too-many': (said) => `There are ${said.number('most')} already, the most there can be. Clear one first.`,
    'not-your-role': () => 'This screen may not do that. Use the bench or the desk.',
    'bad-command': () => 'The board did not understand this tap. Reload the page and try again.',
    internal: () => 'Something went wrong in the board; nothing was changed. Try again.',
  }
}

function doughRoomRefusals({ times }: AnswerParts): Pick<RefusalSentences, DoughRoomRefusal> {
  return {
    'unknown-formula': () => 'The set-up has no such formula. Look at the list again.',
    'unknown-mix': () => 'This mix is not there any more: it was dropped, or its day is over.',
    'unknown-ingredient': () => 'The set-up has no such ingredient. Look at the list again.',
    'unknown-preparation': () => 'The set-up has no such pre-ferment or soaker. Look at the list again.',
    'unknown-build': () => 'This pre-ferment or soaker was used up or cleared away.',
    'other-formula': ({ dough, name }) =>
      `${dough ?? 'This dough'} is not made from the formula${name === null ? '' : ` ${name}`}. Take a mix of its own formula, or change it in the set-up.`,
    'unknown-line': () => 'The mix sheet has no such line. Look at the sheet again.',
    'mix-begun': () => 'This mix has begun and cannot be dropped. If it is no good, end it as spoilt.',
    'mix-not-begun': () => 'This mix has not begun. Drop it from the plan instead.',
    'mix-ended': () => 'This mix has ended. If there is dough left, take its end back.',
    'not-of-formula': ({ name }) => `${name ?? 'This formula'} has no bulk ferment in the set-up. Take another stage.`,
    'date-over': ({ label }) =>
      `${label === null ? 'That day' : capitalised(times.date(label))} is over. Give today or a day to come.`,
    'date-too-far': ({ label }) =>
      `${label === null ? 'That day' : capitalised(times.date(label))} is more than a year ahead. Give an earlier day.`,
    'no-piece-weight': ({ dough }) =>
      `The set-up does not say what a piece of ${dough ?? 'this dough'} weighs. Give its piece weight at the desk first.`,
  }
}

const ORDER_REFUSALS: Pick<RefusalSentences, OrderRefusal> = {
  'unknown-order': () => 'This order is not open any more: it was handed over or cancelled.',
  'unknown-standing': () => 'This standing order was ended already.',
  'unknown-run': () => 'The set-up has no such run. Look at the list again.',
  'unknown-menu-item': () => 'The set-up’s menu has no such thing. Look at the list again.',
  'unknown-portion': () => 'The set-up has no such portion. Look at the list again.',
  'order-empty': () => 'The order is of nothing. Say what is wanted first.',
  'order-nothing-left': () => 'Without all of these no variety is left for a mixed line. Leave one in.',
  'order-when': () => 'Say when the order is due. Only who waits at the counter needs no time.',
  'order-known': ({ mark }) =>
    `This order was sent before${mark === null ? '' : `: it is ${mark}`}. It was not taken twice.`,
  'which-bagel': () => 'Say which bagel it is made on.',
  'details-not-written': () =>
    'The name or note could not be written to the server’s disk; the order was not taken. Try again, or take it without.',
}

function asksWith({ times }: AnswerParts): Sentences<AskCode, Question> {
  return {
    'old-tap': ({ tappedAtMs }) => ({
      question: `This was tapped long ago, without contact${tappedAtMs === null ? '' : `, ${times.at(tappedAtMs)}`}. Does it still count?`,
      yes: 'Yes, count it',
      no: 'No, drop it',
    }),
    'far-count': (said) => ({
      question: `${said.variety ?? 'The board'}: ${said.number('pieces')} counted, ${said.number('known')} known. Is the count right?`,
      yes: 'Yes, as counted',
      no: 'No, count again',
    }),
    'line-not-empty': (said) => ({
      question: `${said.pieces()} still in the kettle, on boards or in the oven. Close the day all the same?`,
      yes: 'Yes, close the day',
      no: 'No, not yet',
    }),
    'orders-open': (said) => ({
      question: `${said.number('orders') === 1 ? 'One order of the day was' : `${said.number('orders')} orders of the day were`} not handed over. Close the day, as if nobody had come for ${said.number('orders') === 1 ? 'it' : 'them'}?`,
      yes: 'Yes, close the day',
      no: 'No, not yet',
    }),
    'retires-in-use': (said) => ({
      question: `${stillUsed(said)} Retire it all the same?`,
      yes: 'Yes, retire it',
      no: 'No, leave it in use',
    }),
    'loses-planned': (said) => ({
      question: `${said.number('count') === 1 ? 'A planned change' : `${said.number('count')} planned changes`} would no longer fit and be dropped. Change it all the same?`,
      yes: 'Yes, drop the plan',
      no: 'No, leave it as it is',
    }),
  }
}

/** What is to be retired and is there or ordered. @example "There are 12 pieces of Sesame, and 2 orders name it." */
function stillUsed(said: Said): string {
  const [name, pieces, orders] = [said.name ?? 'this', said.number('pieces'), said.number('orders')]
  const told = orders === 1 ? '1 order names' : `${orders} orders name`
  if (orders === 0) return `There are ${said.pieces()} of ${name}.`
  return pieces === 0 ? `${told} ${name}.` : `There are ${said.pieces()} of ${name}, and ${told} it.`
}
