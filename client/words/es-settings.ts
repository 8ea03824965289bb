import type { SettingsWords } from './settings.ts'
import type { Words } from './words.ts'

export function esSettings({ acts }: Words): SettingsWords {
  return {
    title: 'Esta pantalla',
    close: 'Listo',
    name: 'Nombre de esta pantalla',
    nameHint: 'Para que los demás sepan cuál es, por ejemplo Pared de la olla.',
    station: 'Puesto',
    allStations: 'Todos los puestos',
    language: 'Idioma',
    asShop: 'Como el local',
    diagonal: 'Pantalla, de esquina a esquina',
    inches: (inches) => `${inches} pulgadas`,
    distance: 'Se lee desde',
    metres: (metres) => `${metres} m`,
    readableTo: (metres) => `Esta pantalla se puede leer desde ${metres} m como máximo.`,
    tooFar: (metres) =>
      `Desde ${metres} m no cabe todo lo que la línea necesita: una pantalla más grande, o más cerca.`,
    volume: 'Sonido',
    percent: (percent) => (percent === 0 ? 'apagado' : `${percent} %`),
    tryOut: 'Probar',
    quiet: 'Horas de silencio',
    quietHint: 'En esas horas nada suena en esta pantalla, aunque algo vaya tarde.',
    quietOff: 'Ninguna',
    from: 'desde',
    to: 'hasta',
    earlier: '− 30 min',
    later: '+ 30 min',
    pedals: 'Pedales y botones',
    pedalsHint:
      'Cada uno hace el paso siguiente de su puesto, cuando ese paso ya lleva medio segundo a la vista. Ate el pedal de la olla solo a la olla y no se acerque al agua hirviendo al pisarlo.',
    acts: (some) => some.map(acts.verb).join(', '),
    coming: 'Ya voy',
    comingHint: 'calla el sonido por un momento',
    learn: 'Aprender una tecla',
    pressNow: 'Pise el pedal ahora',
    cancel: 'Cancelar',
    forget: 'Olvidar',
    key: (code) => `tecla ${code}`,
    waiting: 'Esperan respuesta',
    version: 'Versión',
    less: 'menos',
    more: 'más',
    least: 'mínimo',
    most: 'máximo',
  }
}
