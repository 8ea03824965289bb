import { personId, shelfId, stepId, varietyId } from '../../shared-core/ids.ts'
import { epochMs } from '../../shared-core/units.ts'
import { openDeskByTouch, part } from './support/desk-page.ts'
import { shiftShop } from './support/shift-shop.ts'
import { expect, test } from './support/shop-server.ts'

const NOON = shiftShop({ language: 'en', changeoverIn: 90 })

test('given the opening list, when a step is given to somebody and done, then the shop knows by whom', async ({
  browser,
  server,
}) => {
  await server.start(NOON)
  // The first load is still to come: long after it nobody would be asked for an opening.
  const lines = [{ varietyId: varietyId('sesame'), pieces: 36 }]
  const inAtMs = epochMs(Date.now() + 42 * 60_000)
  await server.act({ type: 'setLoadList', loads: [{ shelfId: shelfId('s1'), inAtMs, lines }] })
  const page = await openDeskByTouch(browser, server)
  const list = part(page, 'opening')
  const [person] = [...NOON.people.values()]
  const [step] = [...NOON.steps.values()].filter((one) => one.list === 'opening' && one.kind === 'plain')
  if (person === undefined || step === undefined) throw new Error('the test shop has no people or no steps')
  const line = list.getByRole('listitem').filter({ hasText: step.name }).first()
  await line.getByRole('combobox').selectOption(person.name)
  const marks = async () => [...(await server.state()).marks.values()].filter((mark) => mark.kind === 'step')
  await expect.poll(marks).toMatchObject([{ stepId: stepId(step.id), personId: personId(person.id), doneAtMs: null }])
  await line.getByRole('button', { name: /^Done/ }).tap()
  await expect(line).toContainText(`, ${person.name}`)
  expect((await marks())[0]?.doneAtMs).not.toBeNull()
})

test('given a note, when it is written and cleared at the desk, then it comes and goes in the shop', async ({
  browser,
  server,
}) => {
  await server.start(NOON)
  const page = await openDeskByTouch(browser, server, { size: { width: 390, height: 844 } })
  const notes = part(page, 'notes')
  await notes.getByRole('textbox').fill('school moved to 7:30')
  await notes.getByRole('button', { name: 'Leave the note' }).tap()
  const texts = async () => [...(await server.state()).notes.values()].map(({ text }) => text)
  await expect.poll(texts).toEqual(['school moved to 7:30'])
  await expect(notes.getByRole('textbox')).toHaveValue('')
  await notes.getByRole('button', { name: 'Clear: school moved to 7:30' }).tap()
  await expect.poll(texts).toEqual([])
  await expect(notes.getByText(/^No notes/)).toBeVisible()
})

test('given the changeover, when it slips by a quarter of an hour and a shelf is done, then the plan says so', async ({
  browser,
  server,
}) => {
  await server.start(NOON)
  await server.act({ type: 'openDay' })
  const page = await openDeskByTouch(browser, server)
  const changeover = part(page, 'changeover')
  await changeover.getByRole('button', { name: '15 min later' }).tap()
  await expect(changeover.getByText(/That is 15 min later than usual/)).toBeVisible()
  await changeover.getByRole('button', { name: '15 min later' }).tap()
  await expect(changeover.getByText(/That is 30 min later than usual/)).toBeVisible()
  await changeover.getByRole('button', { name: 'As usual again' }).tap()
  await expect(changeover.getByText(/than usual/)).toHaveCount(0)
  await changeover
    .getByRole('button', { name: /: Done with bagels$/ })
    .first()
    .tap()
  await expect(changeover.getByRole('cell', { name: 'done with bagels', exact: true })).toHaveCount(1)
  await changeover.getByRole('button', { name: /: Bagels again$/ }).tap()
  await expect(changeover.getByRole('cell', { name: 'done with bagels', exact: true })).toHaveCount(0)
})

test('[I8] given the oven, kettle, boards and trays, when they are read, cared for and counted, then the shop has it', async ({
  browser,
  server,
}) => {
  await server.start(NOON)
  await server.act({ type: 'openDay' })
  const page = await openDeskByTouch(browser, server)
  const oven = part(page, 'oven')
  await oven.getByLabel('The oven: degrees F').fill('455')
  await oven.getByRole('button', { name: 'The oven: Write down' }).tap()
  await expect(oven.getByText(/^455 °F at/)).toBeVisible()
  await oven.getByLabel('The oven: degrees F').fill('45oo')
  await expect(oven.getByRole('button', { name: 'The oven: Write down' })).toBeDisabled()

  const kettle = part(page, 'kettle')
  await kettle.getByRole('button', { name: 'Top up' }).tap()
  await expect(kettle.getByText(/Cold water went in/)).toBeVisible()
  await kettle.getByLabel('Boards usable today').fill('20')
  await kettle.getByRole('button', { name: 'Set boards' }).tap()
  await expect.poll(async () => (await server.state()).marks.get('boards')).toMatchObject({ usable: 20 })
  expect((await server.state()).cares.has('topUp')).toBe(true)

  const lines = [{ varietyId: varietyId('sesame'), pieces: 24 }]
  await server.act({ type: 'load', shelfId: shelfId('s1'), plannedId: null, lines }, 'bench')
  await expect(kettle.getByText(/^Sesame 24/)).toHaveCount(3)
  await kettle.getByRole('button', { name: 'Wash seed trays' }).tap()
  await expect(kettle.getByText('Nothing known since the seed trays were washed.')).toBeVisible()
  await expect(kettle.getByText(/^Sesame 24/)).toHaveCount(2)
})

test('given what is left and what was done, when an act is taken back, then the rod is as before', async ({
  browser,
  server,
}) => {
  await server.start(NOON)
  await server.act({ type: 'count', varietyId: varietyId('sesame'), pieces: 12 }, 'counter')
  const page = await openDeskByTouch(browser, server)
  await expect(part(page, 'rods').getByText('12', { exact: true })).toBeVisible()
  await part(page, 'done')
    .getByRole('row', { name: /counted Sesame 12/ })
    .getByRole('button', { name: 'Take back' })
    .tap()
  await expect(part(page, 'rods').getByText('12', { exact: true })).toHaveCount(0)
})
