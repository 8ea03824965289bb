// @ts-check
// `npm run backup -- …` and its like: what a start does before it serves, then the command in this process, so that
// signals and the exit code are its own.
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { buildIfNeeded } from './build-if-needed.mjs'
import { installIfNeeded } from './install.mjs'
import { nodeComplaint } from './node-version.mjs'
import { orComplain, ROOT, StartError } from './project.mjs'

await orComplain(async () => {
  const complaint = nodeComplaint(process.versions.node)
  if (complaint !== null) throw new StartError(complaint)
  await installIfNeeded(ROOT)
  await buildIfNeeded(ROOT)
})
await import(pathToFileURL(join(ROOT, 'dist', 'commands.mjs')).href)
