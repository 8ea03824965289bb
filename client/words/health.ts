import type { HealthCode, HealthParams, HealthReason } from '../../shared-core/live/health.ts'
import { healthSentence } from '../../shared-core/live/health.ts'
import type { Words } from './words.ts'

/** What the desk says of how the server is. */
export interface HealthWords {
  readonly look: string
  readonly failing: string
  reason(reason: Pick<HealthReason, 'code' | 'params'>): string
}

export function healthWords({ language }: Pick<Words, 'language'>): HealthWords {
  return language === 'en' ? EN : ES
}

const EN: HealthWords = {
  look: 'Look at the server:',
  failing: 'The server takes nothing:',
  // The server's own sentences, which stand in its log, too.
  reason: ({ code, params }) => healthSentence(code, params),
}

const ES: HealthWords = {
  look: 'Revise el servidor:',
  failing: 'El servidor no acepta nada:',
  reason: ({ code, params }) => ES_REASONS[code](params),
}

const ES_REASONS: { readonly [code in HealthCode]: (params: HealthParams) => string } = {
  starting: ({ percent }) => `Se está leyendo el diario: ${percent} %.`,
  'journal-failed': () =>
    'El diario no se puede escribir ni leer. Reinicie el servidor; su terminal y su registro dicen qué pasa.',
  'disk-failing': () =>
    'Lo último no se pudo escribir en el disco. ¿Está lleno? Las pantallas lo envían otra vez por sí solas.',
  'disk-nearly-full': ({ freeMb }) =>
    `Quedan solo ${freeMb} MB libres en el disco de la carpeta del local. Haga sitio antes de que se llene.`,
  'clock-set-back': ({ minutes }) =>
    `El reloj del servidor va ${minutes} min por detrás de lo que ya está anotado: se atrasó. Póngalo en hora.`,
  'clock-jumped': ({ minutes }) =>
    `El reloj del servidor saltó ${minutes} min hacia delante: alguien lo cambió o el equipo estuvo en reposo. Compruebe la hora y que el equipo nunca entre en reposo.`,
  'clock-wrong-year': ({ year }) => `El reloj del servidor dice que es el año ${year}. Póngalo en hora.`,
  'slow-answers': ({ ms }) =>
    `El servidor responde a veces con ${ms} ms de retraso. Mire qué más funciona en su equipo y que no se caliente demasiado.`,
  'history-behind': ({ entries }) =>
    `Los días pasados se están preparando con el diario; faltan ${entries} anotaciones por leer.`,
  'certificate-ends': ({ days }) =>
    `El certificado de https termina en ${days} días. Renuévelo y reinicie el servidor.`,
  'no-copy': () => 'Todavía no hay ninguna copia del diario.',
  'copy-old': ({ minutes }) => `La copia del diario tiene ${minutes} min.`,
  'copy-trouble': ({ why }) => `El diario no se puede copiar: ${why}`,
  'no-archive': ({ days }) => `Hace ${days} días que no hay una buena copia diaria.`,
  'advice-stopped': ({ why }) =>
    `Lo que aconseja el tablero se ha detenido (${why}); vuelve a empezar solo. La tienda sigue sin ello.`,
  'copies-disk-nearly-full': ({ freeMb }) => `Quedan solo ${freeMb} MB libres en el disco de las copias.`,
}
