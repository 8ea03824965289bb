import { userInfo } from 'node:os'
import { resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { systemdUnit } from './systemd-unit.ts'

/** `npm run unit -- --shop FOLDER`: prints a unit for this machine; what follows a further -- goes to the server. */
const USAGE = `npm run unit -- --shop FOLDER [--copies FOLDER] [--user NAME] [--port 4610] [-- --https]
Prints a unit for systemd. To install it:
  npm run --silent unit -- --shop FOLDER | sudo tee /etc/systemd/system/boilboard.service
  sudo systemctl enable --now boilboard`

try {
  const { values, positionals } = parseArgs({
    options: {
      shop: { type: 'string' },
      copies: { type: 'string' },
      user: { type: 'string' },
      port: { type: 'string', default: '4610' },
    },
    allowPositionals: true,
  })
  const port = Number(values.port)
  if (values.shop === undefined) throw new Error('--shop FOLDER is missing: which shop is it?')
  if (!Number.isInteger(port) || port < 1 || port > 65_535)
    throw new Error(`--port is "${values.port}"; it must be a number from 1 to 65535.`)
  process.stdout.write(
    systemdUnit({
      root: resolve(fileURLToPath(new URL('../../', import.meta.url))),
      node: process.execPath,
      shop: resolve(values.shop),
      copies: values.copies === undefined ? null : resolve(values.copies),
      user: values.user ?? userInfo().username,
      port,
      options: positionals,
    }),
  )
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : error}\n\n${USAGE}\n`)
  process.exit(1)
}
