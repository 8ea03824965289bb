import { expect } from 'vitest'
import type { Mapping, Preview, SalesFile } from '../../../shared-core/live/sales-import.ts'
import type { TestServer } from './start-server.ts'
import { ask } from './start-server.ts'

const FILES = '/api/v1/sales/files'

/** Puts a file of past sales in; it waits for its mapping. */
export async function putIn(server: TestServer, text: string, name = 'november.csv'): Promise<Preview> {
  const headers = { 'content-type': 'text/csv' }
  const asked = await ask(server, `${FILES}?name=${encodeURIComponent(name)}`, { body: text, headers })
  if (asked.status !== 200) throw new Error(asked.text)
  return asked.json as Preview
}

/** Puts a file in and takes it as it is understood, or by another mapping, to its end. */
export async function takenFile(
  server: TestServer,
  text: string,
  more: { readonly name?: string; readonly mapping?: Partial<Mapping> } = {},
): Promise<SalesFile> {
  const preview = await putIn(server, text, more.name)
  const { id } = preview.file
  const begun = await ask(server, `${FILES}/${id}/take`, { body: { mapping: { ...preview.mapping, ...more.mapping } } })
  if (begun.status !== 200) throw new Error(begun.text)
  return await untilTaken(server, id)
}

export async function untilTaken(server: TestServer, id: number): Promise<SalesFile> {
  const read = async () => (await ask(server, `${FILES}/${id}`)).json as SalesFile
  // The server is in this process: asked without a pause it would be kept from taking.
  await expect.poll(async () => (await read()).state, { interval: 10, timeout: 60_000 }).not.toBe('taking')
  return await read()
}
