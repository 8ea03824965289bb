import type { LearntTimesWords } from './desk-learnt.ts'
import type { Words } from './words.ts'

export function esLearnt({ times }: Words): LearntTimesWords {
  return {
    times: {
      title: 'Los tiempos reales de la línea',
      hint: (days) =>
        `De lo que se tocó en la línea ${days === 1 ? 'un día' : `los últimos ${days} días`}. Lo que el tablero supuso no enseña nada. Nada cambia hasta que adopte un tiempo.`,
      none: 'Aún se ha tocado muy poco: un tiempo se dice a partir de ocho toques.',
      columns: { what: 'Tiempo', median: 'En realidad', most: 'La mitad', setUp: 'Configuración', taps: 'De' },
      what: {
        boil: 'Hervor, de meter a sacar',
        cycle: 'De una tanda de olla a la siguiente',
        boarding: 'De sacar de la olla a hornear',
        between: 'De una salida a la siguiente carga',
        firstSide: 'Primer lado',
        bake: 'Horneado',
      },
      taps: (taps, days) => `${taps} toques en ${days === 1 ? 'un día' : `${days} días`}`,
      takeOver: 'Adoptar',
      taken: (what) => `${what}: adoptado en la configuración.`,
      asSetUp: 'como está',
    },
    heat: {
      title: 'El calor del horno',
      hint: 'De lecturas escritas en la mesa o enviadas por un termómetro.',
      caution:
        'Una estimación a partir de lecturas. El tablero ni ve ni maneja el horno: decide quien está delante cuándo está caliente.',
      basis: {
        readings: 'Según las lecturas de hoy.',
        past: 'Aún sin lecturas de este calentamiento: según los anteriores de este horno.',
        kind: 'Aún sin lecturas: según hornos de su tipo, tómelo como una idea. Con dos o tres lecturas por calentamiento será el de este horno.',
      },
      noTarget: 'Nadie ha dicho a qué temperatura se hornean los bagels y el segundo menú: en la configuración, Horno.',
      second: (degrees, early, likely, late, wanted) =>
        `${degrees} para el segundo menú: hacia las ${times.clock(likely)}, entre las ${times.clock(early)} y las ${times.clock(late)} ocho veces de diez. Se necesita ${times.at(wanted)}.`,
      never: (degrees) => `Como calienta ahora, no llega a ${degrees} para el segundo menú.`,
      turnOn: (by, likely, ready) =>
        `Para estar listo ${times.at(ready)}: encendido ${times.by(by)} para llegar nueve mañanas de diez; la mitad de ellas bastaría a las ${times.clock(likely)}.`,
      wait: (now, wanted, until) =>
        `Ahora ${now}, los bagels se hornean a ${wanted}: mejor esperar con la próxima carga hasta las ${times.clock(until)} más o menos.`,
      hot: (now) => `Ahora ${now}: la próxima carga no tiene que esperar.`,
      course: (isHeating, tau, limit) =>
        `${isHeating ? 'Calienta' : 'Se enfría'} hacia ${limit}; dos tercios del camino en ${tau} min.`,
      heldBack: (held, degrees) =>
        `De ${held.heatUps} calentamientos anteriores, dichos por sus dos primeros tercios, el resto se desvió ${degrees} y ${held.minutes} min de media.`,
      noReadings: 'Hoy no hay lecturas.',
      plot: 'Lecturas y lo que se espera',
      spoken: (readings) => `${readings} lecturas del horno hoy, con el curso esperado y lo seguro que es.`,
    },
  }
}
