/** The package brings no types; what of it is used here. */
declare module 'pino-roll' {
  import type { EventEmitter } from 'node:events'

  interface RollOptions {
    readonly file: string
    readonly extension: string
    /** "5120k" */
    readonly size: string
    readonly limit: { readonly count: number; readonly removeOtherLogFiles: boolean }
    readonly mkdir: boolean
    readonly sync: boolean
    readonly mode: number
    readonly maxLength: number
  }

  interface RollingFile extends EventEmitter {
    write(text: string): boolean
    end(): void
  }

  export default function roll(options: RollOptions): Promise<RollingFile>
}
