import type { ChildProcess } from 'node:child_process'
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { readFileSync } from 'node:fs'
import { cpuMsOf } from './figures.ts'

export interface Started {
  readonly pid: number
  readonly address: string
  /** From the start of the process to its first healthy answer. */
  readonly readyMs: number
  /** Resident memory once ready. */
  readonly rssMb: number
  /** Processor time until then: what a quiet machine would need, whatever others do meanwhile. */
  readonly cpuMs: number
  readonly printed: () => string
  stop(signal?: NodeJS.Signals): Promise<void>
}

/** Runs a server program on a free port of the loopback and waits until it is healthy. */
export async function startProcess(args: readonly string[], env: Record<string, string> = {}): Promise<Started> {
  const beganMs = performance.now()
  const child = spawn(process.execPath, args, {
    env: { ...process.env, PORT: '0', BIND: '127.0.0.1', ...env },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  let printed = ''
  const address = await new Promise<string>((resolve, reject) => {
    child.once('exit', (code) => reject(new Error(`it ended with ${code}: ${printed}`)))
    child.stdout?.on('data', (chunk: Buffer) => {
      printed += chunk
      const found = /http:\/\/[^\s]+/.exec(printed)?.[0]
      if (found !== undefined) resolve(found)
    })
  })
  await healthy(address)
  const pid = child.pid ?? 0
  return {
    pid,
    address,
    readyMs: performance.now() - beganMs,
    rssMb: rssMbOf(pid),
    cpuMs: cpuMsOf(pid),
    printed: () => printed,
    stop: (signal = 'SIGTERM') => stopped(child, signal),
  }
}

async function healthy(address: string): Promise<void> {
  for (;;) {
    const answer = await fetch(`${address}/api/health`)
    if (answer.ok) return
  }
}

async function stopped(child: ChildProcess, signal: NodeJS.Signals): Promise<void> {
  if (child.exitCode !== null) return
  const closed = once(child, 'close')
  child.kill(signal)
  await closed
}

/** Resident memory of a process. Linux only. */
export function rssMbOf(pid: number): number {
  const line = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))
  return Number(line?.[1] ?? 0) / 1024
}
