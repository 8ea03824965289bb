import { esActs } from './es-acts.ts'
import { esAnswers } from './es-answers.ts'
import { esLine } from './es-line.ts'
import { esLive } from './es-live.ts'
import { esTimes } from './es-times.ts'
import { esTold } from './es-told.ts'
import type { CautionWords, Speech, Vocabulary } from './words.ts'

/** The Spanish that all screens share: plain kitchen Spanish of Latin America. */
export function es(speech: Speech): Vocabulary {
  const times = esTimes(speech)
  const line = esLine(speech)
  const acts = esActs(speech, times, line)
  const told = esTold(speech, { line, times })
  const answers = esAnswers(speech, { times, line, told })
  const live = esLive(speech, { times, line, told, answers })
  return { times, line, acts, told, answers, live, cautions }
}

const cautions: CautionWords = {
  aid: 'La pizarra es una ayuda, no un dispositivo de seguridad: el agua hirviendo, el vapor, los pisos y tablas calientes, las cargas y las batidoras lastiman. Mire antes de meter la mano y confíe más en sus ojos que en un reloj.',
  aidShort: 'Es una ayuda, no un dispositivo de seguridad.',
}
