import type { LearntWords } from './desk-dough-learnt.ts'

export const esLearnt: LearntWords = {
  friction: 'Fricción',
  frictionHint:
    'Lo que la amasadora calienta una masa, aprendido de temperaturas leídas después de amasar. Una lectura rara cambia poco.',
  noFriction: 'Todavía no se aprendió nada: lea la temperatura de la masa después de amasar.',
  frictionColumns: {
    formula: 'fórmula',
    mixer: 'amasadora',
    value: 'se calcula con',
    setUp: 'configuración',
    readings: 'lecturas, la más vieja primero',
    trust: 'cuánto confiar',
  },
  withPreferment: 'con prefermento',
  trust: {
    few: 'pocas lecturas todavía: pesa más la configuración',
    spread: 'las lecturas difieren mucho: vea cómo se toman',
    good: 'las lecturas coinciden',
  },
  pace: 'Ritmo de cada masa',
  paceHint: 'Lo que enseñaron las pruebas de flotar y del dedo: cuánto de la ventana configurada necesita una masa.',
  noPace: 'Todavía no se anotó ninguna prueba.',
  paceSays: (percent) =>
    percent === 100
      ? 'como dice la configuración'
      : percent < 100
        ? `lista un ${100 - percent} % antes de lo que dice la configuración`
        : `necesita un ${percent - 100} % más de lo que dice la configuración`,
  paceTest: (passed, percent, date) => `${date}: ${passed ? 'lista' : 'no lista'} al ${percent} %`,
  divider: 'Controles de la divisora',
  dividerHint: 'Piezas pesadas en la divisora frente a lo que deberían pesar.',
  noDivider: 'Todavía no se pesaron piezas. Se pesan en la mesa de trabajo.',
  dividerColumns: {
    dough: 'masa',
    scaled: 'debe pesar',
    pieces: 'pesadas',
    off: 'diferencia media',
    spread: 'dispersión',
    drift: 'deriva',
    says: 'qué dice',
  },
  off: (weight, within) => `${weight}${within === null ? '' : ` ± ${within}`}`,
  perHour: (weight) => `${weight} por hora`,
  perDay: (weight) => `${weight} por día`,
  dividerSays: {
    tooFew: 'muy pocas para decir algo',
    onWeight: 'en su peso',
    heavy: 'demasiado pesadas',
    light: 'demasiado livianas',
    spread: 'las piezas difieren mucho',
    risingWeight: 'va pesando más',
    fallingWeight: 'va pesando menos',
  },
  label: 'Frente a la etiqueta',
  labelHint:
    'Lo que las piezas pesadas deberían pesar horneadas, frente al peso de la etiqueta. Solo pesar piezas horneadas dice cuánto pesaron.',
  labelHead: (dough, label, count) => `${dough}, etiqueta ${label}: ${count} piezas`,
  verdict: {
    passes: 'Cumple las dos reglas.',
    failsAverage: 'No cumple el promedio: en promedio, demasiado livianas.',
    failsPackages: 'No cumple por piezas sueltas: algunas pesan menos de lo permitido.',
    failsBoth: 'No cumple ninguna de las dos reglas: en promedio livianas, y algunas pesan menos de lo permitido.',
    tooFew: 'Menos de 12 piezas: no se puede decir nada.',
    notInTable: 'La tabla que conoce el tablero no llega a esa etiqueta.',
  },
  labelFigures: (average, limit) =>
    `error medio ${average}${limit === null ? '' : `, límite de error de la muestra ${limit}`}`,
  allowed: (weight, tooLight) =>
    `variación máxima permitida ${weight}; ${tooLight} ${tooLight === 1 ? 'pieza está' : 'piezas están'} más abajo`,
  source: 'Según NIST Handbook 133, capítulo 2, categoría A.',
  office: 'Una ayuda para ver venir problemas, no un fallo legal: consulte su oficina de pesas y medidas.',
}
