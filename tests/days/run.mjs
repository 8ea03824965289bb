// @ts-check
// `npm run days`: simulated days by the thousand. In one file they run twice as fast as read one by one.
import { spawn } from 'node:child_process'
import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { build } from 'esbuild'
import { installIfNeeded } from '../../server/start/install.mjs'
import { ROOT } from '../../server/start/project.mjs'

await installIfNeeded(ROOT)
// Inside the project, so that what is not bundled is found; of its own, as another run may be under way.
const outfile = join(ROOT, 'node_modules', '.cache', 'boilboard-days', `run-${process.pid}.mjs`)
await build({
  entryPoints: [join(ROOT, 'tests', 'days', 'run.ts')],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  sourcemap: 'inline',
  external: ['@photostructure/sqlite'],
  logLevel: 'error',
})
// A day makes much that is soon forgotten: room for it spares a sixth of the time.
const node = ['--max-semi-space-size=32', '--enable-source-maps', outfile, ...process.argv.slice(2)]
const child = spawn(process.execPath, node, { cwd: ROOT, stdio: 'inherit' })
child.once('close', (code) => {
  rmSync(outfile, { force: true })
  process.exitCode = code ?? 1
})
