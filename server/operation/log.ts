import { join } from 'node:path'
import type { Logger } from 'pino'
import { multistream, pino, stdSerializers } from 'pino'
import roll from 'pino-roll'

/**
 * The server's log: JSON lines in the shop's folder, of bounded size, and warnings in words at the terminal. Lines are
 * written at once, so that a crash loses none; there are few, since nothing is logged for a tap.
 *
 * It never holds a secret or what people typed: fields that carry one are left out by name, and what has the form of a
 * token is left out wherever it stands.
 */
export interface ServerLog {
  readonly log: Logger
  /** Lets go of the file. */
  close(): void
}

/** What is asked of a log. */
export type ServerLogger = Pick<Logger, 'info' | 'warn' | 'error'>

export interface LogParts {
  /** Null: no file, warnings at the terminal only. */
  readonly folder: string | null
  /** "trace" to "fatal", or "silent"; what is no level counts as "info". */
  readonly level: string | undefined
  /** Hears warnings and errors, a line each. */
  readonly complain: (line: string) => void
  /** Bytes of a file before the next one is begun; for tests. */
  readonly bytesMax?: number
}

const FILE_BYTES_MAX = 5 * 1024 * 1024
/** Besides the one that is written: with it some 30 MB, many months of a quiet server. */
const OLD_FILES_MAX = 5
/** What waits in memory for a disk that takes nothing. */
const WAITING_BYTES_MAX = 1024 * 1024
const LEVELS = ['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent'] as const
type Level = (typeof LEVELS)[number]
const WARN_VALUE = 40

/** A folder that cannot be written to is told; the shop goes on without a file. */
export async function openLog(parts: LogParts): Promise<ServerLog> {
  const level = LEVELS.find((one) => one === parts.level) ?? 'info'
  const file =
    parts.folder === null || level === 'silent'
      ? null
      : await openFile(parts.folder, parts).catch((error: Error) => tellNone(parts, error))
  const log = pino(
    options(level),
    multistream([
      ...(file === null ? [] : [{ level: 'trace' as const, stream: file }]),
      { level: 'warn' as const, stream: { write: (line: string) => parts.complain(inWords(line)) } },
    ]),
  )
  return { log, close: () => file?.end() }
}

/** With the level of the environment's LOG_LEVEL. */
export async function logInFolder(folder: string | null): Promise<ServerLog> {
  const complain = (line: string) => process.stderr.write(`${line}\n`)
  const opened = await openLog({ folder, level: process.env.LOG_LEVEL, complain })
  // The monitor changes nothing: the process ends as ever, and what starts it again finds why.
  if (folder !== null)
    process.on('uncaughtExceptionMonitor', (error) => opened.log.fatal({ error }, 'the server fell over'))
  return opened
}

async function openFile(folder: string, { complain, bytesMax = FILE_BYTES_MAX }: LogParts) {
  const file = await roll({
    file: join(folder, 'log', 'server'),
    extension: '.log',
    size: `${Math.ceil(bytesMax / 1024)}k`,
    limit: { count: OLD_FILES_MAX, removeOtherLogFiles: true },
    mkdir: true,
    sync: true,
    mode: 0o600,
    maxLength: WAITING_BYTES_MAX,
  })
  let isTold = false
  file.on('error', (error: Error) => {
    if (!isTold) tellNone({ complain }, error)
    isTold = true
  })
  return file
}

function tellNone({ complain }: Pick<LogParts, 'complain'>, error: Error): null {
  complain(`The log cannot be written: ${error.message}. The shop goes on without it.`)
  return null
}

/** Names of fields that carry a secret, or what a person typed. */
const SECRET = ['token', 'cookie', 'authorization', 'set-cookie', 'headers', 'key', 'text', 'note', 'customer', 'phone']

function options(level: Level) {
  return {
    level,
    base: null,
    timestamp: pino.stdTimeFunctions.isoTime,
    serializers: { error: stdSerializers.err },
    redact: {
      paths: [...SECRET, 'code']
        .flatMap((name) => ['', '*.', '*.*.'].map((before) => `${before}["${name}"]`))
        .map(path),
      censor: (value: unknown, at: string[]) => (at.at(-1) === 'code' && !isJoinCode(value) ? value : '[left out]'),
    },
    hooks: { streamWrite: (line: string) => line.replace(TOKEN, '[left out]') },
  }
}

/** pino writes "a["b"]", not "a.["b"]". */
function path(text: string): string {
  return text.replace('.[', '[')
}

/** The code of an error (ENOSPC) helps; that of a device lets one in. */
function isJoinCode(value: unknown): boolean {
  return /^\d{6}$/.test(String(value))
}

/** 32 random bytes as base64url: 43 characters. */
const TOKEN = /(?<![\w-])[\w-]{43}(?![\w-])/g

/** @example inWords('{"level":40,"time":"2026-11-26T05:10:00.000Z","msg":"a chore failed"}') // 'Warning, 2026-11-26T05:10:00.000Z: a chore failed' */
function inWords(line: string): string {
  const { level, time, msg, error } = JSON.parse(line)
  const why = typeof error?.message === 'string' ? `: ${error.message}` : ''
  return `${level > WARN_VALUE ? 'Error' : 'Warning'}, ${time}: ${msg}${why}`
}
