import { readFileSync } from 'node:fs'
import { cpus } from 'node:os'

/** The value below which a share of the others lie; the nearest one measured. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((one, other) => one - other)
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN
}

export function median(values: readonly number[]): number {
  return quantile(values, 0.5)
}

export function ms(value: number): string {
  return `${value.toFixed(2)} ms`
}

/** Processor time of the whole machine and of some processes, to tell how much others used meanwhile. Linux only. */
export class ForeignCpu {
  readonly #pids: readonly number[]
  readonly #start: { readonly busy: number; readonly own: number; readonly atMs: number }

  constructor(pids: readonly number[]) {
    this.#pids = pids
    this.#start = this.#read()
  }

  /** Share of all processors that programs other than ours used since the start, 0 to 1. */
  share(): number {
    const now = this.#read()
    const spanMs = (now.atMs - this.#start.atMs) * cpus().length
    return Math.max(0, now.busy - this.#start.busy - (now.own - this.#start.own)) / spanMs
  }

  #read() {
    const busy = cpus().reduce((sum, { times }) => sum + times.user + times.nice + times.sys + times.irq, 0)
    const own = this.#pids.reduce((sum, pid) => sum + cpuMsOf(pid), 0)
    return { busy, own, atMs: performance.now() }
  }
}

/** 100 ticks a second on every Linux that Node runs on. */
const TICK_MS = 10

/** Processor time that a process has used since its start. */
export function cpuMsOf(pid: number): number {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? []
    return (Number(fields[11]) + Number(fields[12])) * TICK_MS
  } catch {
    return 0
  }
}
