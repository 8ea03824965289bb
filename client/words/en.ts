import { enActs } from './en-acts.ts'
import { enAnswers } from './en-answers.ts'
import { enLine } from './en-line.ts'
import { enLive } from './en-live.ts'
import { enTimes } from './en-times.ts'
import { enTold } from './en-told.ts'
import type { CautionWords, Speech, Vocabulary } from './words.ts'

/** The English that all screens share. */
export function en(speech: Speech): Vocabulary {
  const times = enTimes(speech)
  const line = enLine(speech)
  const acts = enActs(speech, times, line)
  const told = enTold(speech, { line, times })
  const answers = enAnswers(speech, { times, line, told })
  const live = enLive(speech, { times, line, told, answers })
  return { times, line, acts, told, answers, live, cautions }
}

const cautions: CautionWords = {
  aid: 'The board is an aid, not a safety device: hot water, steam, hot decks and boards, lifting and mixers hurt people. Look before you reach, and trust your eyes over a timer.',
  aidShort: 'An aid, not a safety device.',
}
