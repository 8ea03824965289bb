import type { Line } from '../../shared-core/day/state.ts'
import type { AfternoonWords } from './afternoon.ts'
import type { Words } from './words.ts'

export function enAfternoon({ times, names }: Words): AfternoonWords {
  const line = ({ varietyId, pieces }: Line, index: number) =>
    `${pieces}${index === 0 ? ' more' : ''} ${names.variety(varietyId)}`
  return {
    title: 'For the afternoon',
    moreBy: (inByMs, lines) => `Last load ${times.by(inByMs)}: ${lines.map(line).join(', ')}`,
    moreFew: (inByMs, first, others) =>
      `Last load ${times.by(inByMs)}: ${line(first, 0)} and ${others} other ${others === 1 ? 'kind' : 'kinds'}`,
    moreShort: (inByMs, first, others) =>
      `${times.by(inByMs)}: +${first.pieces} ${names.variety(first.varietyId)} and ${others} ${others === 1 ? 'kind' : 'kinds'}`,
    enough: (inByMs) => `Last load ${times.by(inByMs)}: what is planned will do`,
    noLoads: 'No load goes in any more: what is here and on the way is for the afternoon.',
    columns: {
      variety: 'variety',
      left: (fromMs) => `left ${times.at(fromMs)}`,
      lasts: 'lasts to close, days',
      more: 'add',
    },
    left: ({ q10, q50, q90 }) => (q10 === q90 ? String(q50) : `${q50} (${q10} to ${q90})`),
    lasts: (percent) => (percent >= 95 ? 'surely' : percent < 5 ? 'hardly' : `${Math.round(percent / 10)} of 10`),
    more: (pieces) => `+${pieces}`,
    guess: 'Rests on guesses: there are no sales to learn from yet.',
    none: 'Nothing is reckoned for the afternoon: no day is open, it is over, or the shop bakes until it closes.',
  }
}
