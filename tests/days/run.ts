import { fork } from 'node:child_process'
import { parseArgs } from 'node:util'
import type { DayResult } from './one-day.ts'
import { oneDay } from './one-day.ts'
import type { Bug, WorldOptions } from './options.ts'
import { BUGS, DAY_MINUTES, drawnOptions } from './options.ts'
import { findLine, shrink } from './shrink.ts'
import { Tally } from './tally.ts'

const HELP = `npm run days -- [--days N] [--seed S] [--jobs J] [--minutes M] [--file] [--bug NAME]
  --days     how many days, each with the next seed (100)
  --seed     the first seed (chosen by the clock)
  --jobs     processes that share them (2)
  --minutes  how long a day is, from four in the morning to the evening, with all its hours (${DAY_MINUTES})
  --file     each day on a real journal in a folder of its own, instead of a simulated disk
  --bug      a planted bug that the checks must find: ${BUGS.slice(1).join(', ')}`
/** In fewer days some kind of fault may not have fired by mere chance. */
const PROVING_DAYS = 100
const TOLD_EVERY_DAYS = 500

interface Task {
  readonly days: number
  readonly seed: number
  readonly jobs: number
  readonly minutes: number
  readonly isOnFile: boolean
  readonly bug: Bug
}

/** What a process says: a day that is over, or that all its days are, with the processor time that they took. */
type Said = { readonly seed: number; readonly result: DayResult } | { readonly cpuMs: number }

const { values } = parseArgs({
  options: {
    days: { type: 'string', default: '100' },
    seed: { type: 'string', default: String(Date.now() % 2 ** 32) },
    jobs: { type: 'string', default: '2' },
    minutes: { type: 'string', default: String(DAY_MINUTES) },
    file: { type: 'boolean', default: false },
    bug: { type: 'string', default: 'none' },
    job: { type: 'string' },
    help: { type: 'boolean', default: false },
  },
})
const task = taskOf()
if (task === null) {
  console.log(HELP)
  process.exitCode = values.help ? 0 : 1
} else if (values.job !== undefined) await runShare(task, Number(values.job))
else process.exitCode = (await runAll(task)) ? 0 : 1

function taskOf(): Task | null {
  const [days = 0, seed = -1, jobs = 0, minutes = 0] = [values.days, values.seed, values.jobs, values.minutes].map(
    Number,
  )
  const bug = BUGS.find((one) => one === values.bug)
  const isFine = [days, jobs, minutes].every((count) => Number.isSafeInteger(count) && count > 0) && seed >= 0
  // A day of fewer minutes has no room for the hours of a shop, which are whole minutes.
  if (values.help || bug === undefined || !isFine || minutes < 12) return null
  return { days, seed, jobs: Math.min(jobs, days), minutes, isOnFile: values.file, bug }
}

function optionsOf({ minutes, isOnFile, bug }: Task, seed: number): WorldOptions {
  return { ...drawnOptions(seed, minutes), isOnFile, bug }
}

/** One process's share: every so many-th seed. */
async function runShare(its: Task, job: number): Promise<void> {
  const begin = process.cpuUsage()
  for (let at = job; at < its.days; at += its.jobs) {
    const seed = its.seed + at
    say({ seed, result: await oneDay(optionsOf(its, seed)) })
  }
  const { user, system } = process.cpuUsage(begin)
  say({ cpuMs: (user + system) / 1_000 })
}

function say(said: Said): void {
  process.send?.(said)
}

async function runAll(its: Task): Promise<boolean> {
  const tally = new Tally()
  const beganMs = performance.now()
  const { failed, cpuMs } = await runJobs(its, tally)
  if (failed !== null) {
    await tellFailure(its, failed)
    return false
  }
  console.log(String(tally))
  const wallSeconds = Math.round((performance.now() - beganMs) / 1_000)
  console.log(`${(cpuMs / 1_000 / tally.days).toFixed(3)} s of processor time a day, ${wallSeconds} s in all`)
  const missing = tally.days < PROVING_DAYS ? [] : tally.missing()
  for (const one of missing) console.log(`This run proves nothing of it: ${one}.`)
  return missing.length === 0
}

/** Ends at the first day that goes wrong. */
function runJobs(its: Task, tally: Tally): Promise<{ failed: number | null; cpuMs: number }> {
  return new Promise((resolve, reject) => {
    let [cpuMs, left] = [0, its.jobs]
    let failed: number | null = null
    const children = Array.from({ length: its.jobs }, (_, job) =>
      fork(process.argv[1] ?? '', [...process.argv.slice(2), '--seed', String(its.seed), '--job', String(job)]),
    )
    const end = (seed: number) => {
      failed ??= seed
      for (const child of children) child.kill()
    }
    const hold = (result: DayResult) => {
      tally.add(result)
      if (tally.days % TOLD_EVERY_DAYS === 0) console.log(`${tally.days} days held`)
    }
    for (const child of children) {
      child.on('message', (said: Said) => {
        if ('cpuMs' in said) cpuMs += said.cpuMs
        else if (said.result.trouble !== null) end(said.seed)
        else hold(said.result)
      })
      child.once('error', reject)
      child.once('close', (code) => {
        left -= 1
        if (code !== 0 && failed === null) reject(new Error(`a process ended with ${code}`))
        if (left === 0) resolve({ failed, cpuMs })
      })
    }
  })
}

/** The day again, its story, the smallest day that goes wrong in the same way, and the line that keeps it. */
async function tellFailure(its: Task, seed: number): Promise<void> {
  const options = optionsOf(its, seed)
  const result = await oneDay(options)
  console.log(
    `\n${result.report ?? `seed ${seed} went wrong once and held the second time: the run depends on more than its seed`}`,
  )
  if (result.trouble === null) return
  const shrunk = await shrink(options, result, oneDay)
  console.log(`\nThe smallest day that goes wrong in the same way (${shrunk.tries} tries):\n\n${shrunk.result.report}`)
  console.log(`\nFor tests/days/finds.ts:\n  ${findLine(shrunk)}`)
}
