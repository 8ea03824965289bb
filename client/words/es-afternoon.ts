import type { Line } from '../../shared-core/day/state.ts'
import type { AfternoonWords } from './afternoon.ts'
import type { Words } from './words.ts'

export function esAfternoon({ times, names }: Words): AfternoonWords {
  const line = ({ varietyId, pieces }: Line, index: number) =>
    `${pieces}${index === 0 ? ' más de' : ''} ${names.variety(varietyId)}`
  return {
    title: 'Para la tarde',
    moreBy: (inByMs, lines) => `Última carga ${times.by(inByMs)}: ${lines.map(line).join(', ')}`,
    moreFew: (inByMs, first, others) =>
      `Última carga ${times.by(inByMs)}: ${line(first, 0)} y ${others} ${others === 1 ? 'clase' : 'clases'} más`,
    moreShort: (inByMs, first, others) =>
      `${times.by(inByMs)}: +${first.pieces} ${names.variety(first.varietyId)} y ${others} ${others === 1 ? 'clase' : 'clases'}`,
    enough: (inByMs) => `Última carga ${times.by(inByMs)}: lo planeado alcanza`,
    noLoads: 'Ya no entra ninguna carga: lo que hay y viene es para la tarde.',
    columns: {
      variety: 'variedad',
      left: (fromMs) => `quedan ${times.at(fromMs)}`,
      lasts: 'alcanza, días',
      more: 'poner',
    },
    left: ({ q10, q50, q90 }) => (q10 === q90 ? String(q50) : `${q50} (${q10} a ${q90})`),
    lasts: (percent) => (percent >= 95 ? 'seguro' : percent < 5 ? 'difícil' : `${Math.round(percent / 10)} de 10`),
    more: (pieces) => `+${pieces}`,
    guess: 'Es a ojo: todavía no hay ventas de que aprender.',
    none: 'No hay cálculo para la tarde: no hay día abierto, ya pasó, o se hornea hasta el cierre.',
  }
}
