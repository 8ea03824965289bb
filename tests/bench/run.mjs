// @ts-check
// `npm run bench`: each figure beside its floor, measured in the same run. Parts: see PARTS.
import { spawn } from 'node:child_process'
import { buildIfNeeded } from '../../server/start/build-if-needed.mjs'
import { installIfNeeded } from '../../server/start/install.mjs'
import { ROOT } from '../../server/start/project.mjs'

const PARTS = [
  'latency',
  'load',
  'paint',
  'idle',
  'week',
  'start-up',
  'sizes',
  'sweeps',
  'sheets',
  'mixing-order',
  'plan',
  'orders',
  'demand',
  'sales-import',
]

await installIfNeeded(ROOT)
await buildIfNeeded(ROOT)
const given = process.argv.slice(2)
// What begins with -- and all after it is for the part: `npm run bench -- load --seconds 5`.
const firstOption = given.findIndex((arg) => arg.startsWith('--'))
const asked = firstOption === -1 ? given : given.slice(0, firstOption)
const options = given.slice(asked.length)
for (const part of PARTS) {
  if (asked.length > 0 && !asked.includes(part)) continue
  const code = await run(part)
  if (code !== 0) process.exitCode = 1
}

/** @param {string} part */
function run(part) {
  const child = spawn(process.execPath, ['--import', 'tsx', `tests/bench/${part}.ts`, ...options], {
    cwd: ROOT,
    stdio: 'inherit',
  })
  return new Promise((resolve) => child.once('close', resolve))
}
