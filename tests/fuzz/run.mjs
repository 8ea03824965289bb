// @ts-check
// `npm run fuzz`: in one file it runs as the server does, and faster than read one by one.
import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { build } from 'esbuild'
import { installIfNeeded } from '../../server/start/install.mjs'
import { ROOT } from '../../server/start/project.mjs'

await installIfNeeded(ROOT)
// Inside the project, so that what is not bundled is found.
const outfile = join(ROOT, 'node_modules', '.cache', 'boilboard-fuzz', 'run.mjs')
await build({
  entryPoints: [join(ROOT, 'tests', 'fuzz', 'run.ts')],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  sourcemap: 'inline',
  packages: 'external',
  define: { __BUILD_ID__: '"fuzz"' },
  logLevel: 'error',
})
const child = spawn(process.execPath, ['--enable-source-maps', outfile, ...process.argv.slice(2)], {
  cwd: ROOT,
  stdio: 'inherit',
})
child.once('close', (code) => {
  process.exitCode = code ?? 1
})
