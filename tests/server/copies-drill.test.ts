import { existsSync } from 'node:fs'
import { expect, it } from 'vitest'
import { loadSqlite } from '../../server/journal/sqlite.ts'
import { Chance } from '../days/chance.ts'
import { begunCopy, drill } from '../drill/drill.ts'
import { SERVER, ServerProcess, withServerProcesses } from './support/server-process.ts'
import { ask } from './support/start-server.ts'
import { tempFolder } from './support/temp-folder.ts'

withServerProcesses()

it('[A25] given a shop under load that is killed and its journal broken, when restored and started, then all that is there is as it was, and every answer is given again', async () => {
  const parts = { sqlite: await loadSqlite(), program: SERVER, folder: tempFolder() }
  const { wrong, copied, restored, answered } = await drill({ ...parts, chance: new Chance(3), damage: 'bits flipped' })
  expect(wrong).toEqual([])
  expect(restored).toBeGreaterThanOrEqual(copied)
  expect(answered).toBeGreaterThan(10)
})

it('[A25] given a server on a folder, when it is stopped, then its copy has the last entry', async () => {
  const folder = tempFolder()
  const server = new ServerProcess(['--shop', folder])
  const port = await server.port()
  await begunCopy(port, 0)
  const body = { id: 'note0000001', deviceSeq: 1, tappedAtMs: null, type: 'writeNote', text: 'the last one' }
  const { json } = await ask({ port }, '/api/v1/commands', { body })
  expect(json).toMatchObject({ answer: { kind: 'taken' } })
  await server.kill('SIGTERM')
  const sqlite = await loadSqlite()
  const db = new sqlite.DatabaseSync(`${folder}/copies/journal.sqlite`, { readOnly: true })
  expect(db.prepare('SELECT command_id FROM entries ORDER BY seq DESC LIMIT 1').get()).toMatchObject({
    command_id: 'note0000001',
  })
  expect(existsSync(`${folder}/copies-folder.txt`), 'a folder that was not chosen is not written down').toBe(false)
})
