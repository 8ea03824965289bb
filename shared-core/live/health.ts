/**
 * How the server is, as `GET /api/health` and the desk tell it. A reason has a code and parameters, so that each screen
 * says it in its own language; the English sentence stands beside them for scripts and logs.
 */

/** `note`: nothing to do. `warning`: the shop goes on, somebody should look. `failing`: nothing can be taken. */
export type HealthLevel = 'note' | 'warning' | 'failing'

const SENTENCES = {
  starting: ({ percent }) => `Reading the journal, ${percent} % done.`,
  'journal-failed': () =>
    'The journal cannot be written or read. Restart the server; its terminal and its log say what is wrong.',
  'disk-failing': () =>
    'The last commands could not be written to disk. Is it full? Screens send them again by themselves.',
  'disk-nearly-full': ({ freeMb }) =>
    `Only ${freeMb} MB are free on the disk of the shop's folder. Make room before it is full.`,
  'clock-set-back': ({ minutes }) =>
    `The server's clock is ${minutes} min behind what was recorded already: it was set back. Set it right.`,
  'clock-jumped': ({ minutes }) =>
    `The server's clock jumped ${minutes} min ahead: it was set, or the computer slept. See that it is right and that the computer never sleeps.`,
  'clock-wrong-year': ({ year }) => `The server's clock says that it is ${year}. Set it right.`,
  'slow-answers': ({ ms }) =>
    `The server answers ${ms} ms late at times. See what else runs on its computer, and that it is not too hot.`,
  'history-behind': ({ entries }) =>
    `Past days are being made from the journal; ${entries} entries are still to be read.`,
  'certificate-ends': ({ days }) =>
    `The certificate for https ends in ${days} days. Renew it; then restart the server.`,
  'no-copy': () => 'There is no copy of the journal yet.',
  'copy-old': ({ minutes }) => `The copy of the journal is ${minutes} min old.`,
  'copy-trouble': ({ why }) => `The journal cannot be copied: ${why}`,
  'no-archive': ({ days }) => `There has been no good daily archive for ${days} days.`,
  'advice-stopped': ({ why }) =>
    `What the board advises has stopped (${why}); it begins again by itself. The shop goes on without it.`,
  'copies-disk-nearly-full': ({ freeMb }) => `Only ${freeMb} MB are free on the disk of the copies.`,
} as const satisfies { readonly [code: string]: (params: HealthParams) => string }

export type HealthParams = Readonly<Record<string, number | string>>
export type HealthCode = keyof typeof SENTENCES
export const HEALTH_CODES = Object.keys(SENTENCES) as readonly HealthCode[]

export interface HealthReason {
  readonly code: HealthCode
  readonly level: HealthLevel
  readonly params: HealthParams
  /** In English. */
  readonly text: string
}

/** A reason with its English sentence. */
export function healthReason(code: HealthCode, level: HealthLevel, params: HealthParams = {}): HealthReason {
  return { code, level, params, text: healthSentence(code, params) }
}

export function healthSentence(code: HealthCode, params: HealthParams): string {
  const sentence: (params: HealthParams) => string = SENTENCES[code]
  return sentence(params)
}

/** The worst that the reasons say; a note does not make a server less well. */
export function healthStatus(reasons: readonly HealthReason[]): 'ok' | 'warning' | 'failing' {
  if (reasons.some(({ level }) => level === 'failing')) return 'failing'
  return reasons.some(({ level }) => level === 'warning') ? 'warning' : 'ok'
}
