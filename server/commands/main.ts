import { JournalError } from '../journal/journal.ts'
import { backup } from './backup.ts'
import type { Command } from './command.ts'
import { CommandRefused } from './command.ts'
import { compact } from './compact.ts'
import { exportShop } from './export.ts'
import { importShop } from './import.ts'
import { restore } from './restore.ts'
import { verify } from './verify.ts'

/** The commands at the terminal besides the server: `npm run NAME -- …`. */
const COMMANDS: { readonly [name: string]: Command } = {
  backup,
  restore,
  export: exportShop,
  import: importShop,
  verify,
  compact,
}

/** Ends with 0 when it was done, 1 when it was not, 2 when it was not asked for rightly. */
async function main([name = '', ...args]: readonly string[]): Promise<void> {
  const command = COMMANDS[name]
  if (command === undefined) throw new CommandRefused(`There is no command ${name}.`)
  await command(args, (line) => process.stdout.write(`${line}\n`))
}

main(process.argv.slice(2)).catch((error: unknown) => {
  const isTheirs = error instanceof CommandRefused || error instanceof JournalError
  process.stderr.write(`${isTheirs ? error.message : error instanceof Error ? error.stack : String(error)}\n`)
  process.exitCode = error instanceof CommandRefused && error.isUsage ? 2 : 1
})
