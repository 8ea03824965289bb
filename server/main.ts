import { join } from 'node:path'
import type { Answer } from '../shared-core/day/answers.ts'
import { ASK_CODES } from '../shared-core/day/answers.ts'
import { NEW_SHOP_NAME } from '../shared-core/shop/new-shop.ts'
import { startingPoint } from '../shared-core/shop/starting-points.ts'
import { copiesThreadFor } from './copies/copies-thread.ts'
import { copiesFolderOf } from './copies/copy-folder.ts'
import { refuseHalfPutBack } from './copies/put-back.ts'
import { openDemo } from './demo/open-demo.ts'
import { asTyped } from './devices/join-codes.ts'
import { JournalError } from './journal/journal.ts'
import { loadSqlite } from './journal/sqlite.ts'
import { SqliteJournal } from './journal/sqlite-journal.ts'
import { isOpenToLan } from './lan/addresses.ts'
import { multicastFor } from './lan/multicast.ts'
import { CertificateError } from './operation/certificate-keeper.ts'
import { certificateFor } from './operation/certificate-options.ts'
import { logInFolder } from './operation/log.ts'
import { AUTHORITY_PATH } from './operation/plain-answer.ts'
import type { Options } from './options.ts'
import { readOptions } from './options.ts'
import type { Serving } from './serve.ts'
import { serve } from './serve.ts'
import { takeFolder } from './shop/folder.ts'
import { readSetUp } from './shop/set-up-file.ts'
import { takeSetUp } from './shop/take-set-up.ts'
import { workThread } from './work/work-thread.ts'

/** Wires everything; the only place that knows all parts. */
async function main(): Promise<void> {
  const read = readOptions(process.argv.slice(2), process.env)
  if (!read.ok) throw new Refused(read.why)
  const { options } = read
  const running = options.shop === null ? await openDemo(options, say) : await openShop(options, options.shop)
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => {
      running.stop().then(
        () => process.exit(0),
        (error: unknown) => complain(error),
      )
    })
  }
  // Last: who reads this may stop it at once.
  printAddresses(options, running)
}

/** A real shop's folder: opened, or made with a starting point that the shop's own set-up then replaces. */
async function openShop(options: Options, folder: string): Promise<Serving> {
  const setUp = options.setUp === null ? null : readSetUp(options.setUp)
  if (setUp !== null && !setUp.ok) {
    const told = setUp.problems.map(({ path, wrong, right }) => `${path}: ${wrong} ${right}`)
    throw new Refused(`The set-up file has mistakes; nothing of it was taken.\n${told.join('\n')}`)
  }
  const sqlite = await loadSqlite()
  const taken = takeFolder(sqlite, folder)
  refuseHalfPutBack(folder, copiesFolderOf(folder, options.copies))
  const journal = new SqliteJournal(sqlite, taken.journalFile, 'shop')
  const { log, close } = await logInFolder(folder)
  const serving = await serve({
    journal,
    closed: options.isOpen ? null : { file: taken.devicesFile, isDeskLost: options.isDeskLost },
    historyFile: taken.historyFile,
    detailsFile: taken.detailsFile,
    folder,
    ...certificateFor(options, folder),
    log,
    copies: copiesThreadFor(folder, taken.journalFile, options.copies),
    work: workThread({ start: { salesFile: taken.salesFile }, log }),
    options,
    demo: null,
    say,
    ...multicastFor(options),
  })
  if (setUp !== null) say(`Set-up ${told(await takeSetUp(serving.room, setUp.shop, ASK_CODES))}.`)
  else if (serving.room.state.shop === null) {
    const { timeZone } = Intl.DateTimeFormat().resolvedOptions()
    await takeSetUp(serving.room, startingPoint('shelves', { name: NEW_SHOP_NAME, zone: timeZone, language: 'en' }), [])
    say(
      `A new shop in ${join(folder, 'journal.sqlite')}, with a set-up to begin from. Load your own with --setup FILE.json.`,
    )
  }
  return {
    ...serving,
    stop: async () => {
      await serving.stop()
      close()
      taken.release()
    },
  }
}

function told(answer: Answer): string {
  return answer.kind === 'taken' ? 'taken' : `not taken: ${JSON.stringify(answer)}`
}

function printAddresses({ bind, https }: Options, { port, addresses, door }: Serving): void {
  const base = `${https === null ? 'http' : 'https'}://localhost:${port}`
  say(`Boilboard is at ${base}`)
  if (https === 'own') say(`  Each device trusts it once: ${base}${AUTHORITY_PATH}; the desk says how, under Screens.`)
  const code = door.membership?.codes.terminalCode ?? null
  if (code !== null) say(`  To make a browser the shop's desk: open ${base} in it and type ${asTyped(code)}`)
  if (!isOpenToLan(bind)) return
  for (const { url } of addresses()) say(`  from other devices on this network: ${url}`)
  say('  screens: /wall  /bench  /counter  /desk')
}

/** Something that the person at the terminal can put right; told without a stack. */
class Refused extends Error {}

function say(line: string): void {
  process.stdout.write(`${line}\n`)
}

function complain(error: unknown): void {
  const isTheirs = error instanceof Refused || error instanceof JournalError || error instanceof CertificateError
  const isPortTaken = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE'
  const port = isPortTaken
    ? 'Another program uses this port. Stop it, or choose another one: PORT=8080 npm start'
    : null
  process.stderr.write(`${port ?? (isTheirs ? error.message : error instanceof Error ? error.stack : String(error))}\n`)
  process.exit(1)
}

main().catch(complain)
