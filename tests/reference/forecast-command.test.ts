import { execFile } from 'node:child_process'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { PassThrough } from 'node:stream'
import { text } from 'node:stream/consumers'
import { promisify } from 'node:util'
import { gzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { forecastCommand } from '../../server/forecast/command.ts'
import { HoursSeen } from '../../server/forecast/usual-hours.ts'
import { dateAfter } from '../../shared-core/day/label.ts'
import { drawer } from '../core/support/draw.ts'

const HEADER = 'ts,txn,item,qty'
const FIRST = '2026-01-05'
let folder = ''

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'forecast-'))
  await writeFile(join(folder, 'items.csv'), 'item,evaluated\nSesame,1\nPoppy,1\n"Salt, coarse",1\nKnife,0\n')
})
afterAll(() => rm(folder, { recursive: true }))

/** Rows of an invented till, by day. */
function tillRows(days: number): string[][] {
  const { upTo } = drawer(5)
  return Array.from({ length: days }, (_, place) => {
    const date = dateAfter(FIRST, place)
    return Array.from({ length: 40 + upTo(30) }, (_row, txn) => {
      const [hour, minute] = [7 + upTo(6), upTo(59)].map((part) => String(part).padStart(2, '0'))
      const item = ['Sesame', 'Sesame', 'Poppy', '"Salt, coarse"'][upTo(3)]
      return `${date}T${hour}:${minute}:00,${txn},${item},${upTo(4) === 0 ? 6 : 1}`
    })
  })
}

async function file(name: string, rows: readonly string[], header = HEADER): Promise<string> {
  const path = join(folder, name)
  const content = [header, ...rows, ''].join('\n')
  await writeFile(path, name.endsWith('.gz') ? gzipSync(content) : content)
  return path
}

/** Runs the command in this process. */
async function run(...args: string[]): Promise<{ status: number; data: string; said: string }> {
  const data = new PassThrough()
  const said: string[] = []
  const read = text(data)
  const status = await forecastCommand(args, { data, say: (sentence) => said.push(sentence) })
  data.end()
  return { status, data: await read, said: said.join('\n') }
}

function days(sales: readonly string[], from: number, to: number, ...more: string[]) {
  const dates = ['--from', dateAfter(FIRST, from), '--to', dateAfter(FIRST, to)]
  return run('days', '--sales', ...sales, '--items', join(folder, 'items.csv'), ...dates, ...more)
}

describe('the forecast command', () => {
  it('[Q14] given thirty days, when the days from the twentieth on sell otherwise, then nothing said of days up to it changes', async () => {
    const rows = tillRows(30)
    const later = rows.map((day, place) => (place < 20 ? day : day.map((row) => row.replace(/\d+$/, '9'))))
    const was = await days([await file('was.csv', rows.flat())], 12, 20)
    const is = await days([await file('is.csv', later.flat())], 12, 20)
    expect(was.status).toBe(0)
    expect(is.data).toBe(was.data)
    // Had the change no way to be seen, this would prove nothing.
    const [seen, unseen] = await Promise.all([
      days([join(folder, 'is.csv')], 21, 21),
      days([join(folder, 'was.csv')], 21, 21),
    ])
    expect(seen.data).not.toBe(unseen.data)
  })

  it('[Q14] given a day, when it sells otherwise from ten on, then what is said as of ten stays and as of noon changes', async () => {
    const rows = tillRows(25)
    const last = rows[24]?.map((row) => (row.slice(11, 16) >= '10:00' ? row.replace(/\d+$/, '9') : row)) ?? []
    const was = await days([await file('ten.csv', rows.flat())], 24, 24, '--asof', '10:00', '--asof', '12:00')
    const is = await days(
      [await file('ten-later.csv', [...rows.slice(0, 24).flat(), ...last])],
      24,
      24,
      '--asof',
      '10:00',
      '12:00',
    )
    const asOf = (data: string, time: string) => data.split('\n').filter((row) => row.endsWith(`,${time}`))
    expect(asOf(was.data, '10:00')).toHaveLength(3)
    expect(asOf(is.data, '10:00')).toEqual(asOf(was.data, '10:00'))
    expect(asOf(is.data, '12:00')).not.toEqual(asOf(was.data, '12:00'))
  })

  it('[Q14] given rows shuffled over two files, one of them packed, when asked, then every line is the same', async () => {
    const rows = tillRows(25).flat()
    const { upTo } = drawer(9)
    const shuffled = rows
      .map((row) => ({ row, at: upTo(1_000_000) }))
      .sort((one, other) => one.at - other.at)
      .map(({ row }) => row)
    const one = await days([await file('one.csv', rows)], 15, 24, '--asof', '10:30')
    const both = [await file('a.csv', shuffled.slice(0, 500)), await file('b.csv.gz', shuffled.slice(500))]
    const other = await days(both, 15, 24, '--asof', '10:30')
    expect(one.data.split('\n')).toHaveLength(1 + 10 * 3 * 2 + 1)
    expect(other.data).toBe(one.data)
  })

  it('[Q14] given quantiles, when read, then they are whole, in order, and of the items to be evaluated', async () => {
    const { data } = await days([await file('read.csv', tillRows(20).flat())], 10, 19)
    const [header, ...rows] = data.trimEnd().split('\n')
    expect(header).toBe('date,item,q10,q50,q80,q90')
    for (const row of rows) {
      const quantiles = /(\d+),(\d+),(\d+),(\d+)$/.exec(row)?.slice(1).map(Number) ?? []
      expect(quantiles).toHaveLength(4)
      expect(quantiles).toEqual(quantiles.toSorted((left, right) => left - right))
    }
    expect(rows.filter((row) => row.includes('"Salt, coarse"'))).toHaveLength(10)
    expect(data).not.toContain('Knife')
  })

  it('[Q14] given a sold-out day and a stock, when asked, then demand is above what was sold, and run-out times are in order', async () => {
    const sales = await file('cut.csv', tillRows(30).flat())
    const date = dateAfter(FIRST, 29)
    const soldOut = await file(
      'sold-out.csv',
      [`A,${date},Sesame,10:00`, `B,${date},Sesame,`],
      'mechanism,date,item,sold_out_at',
    )
    const cut = await run('soldout', '--sales', sales, '--soldout', soldOut, '--mechanism', 'A')
    const whole = await run('soldout', '--sales', sales, '--soldout', soldOut, '--mechanism', 'B')
    const demandOf = ({ data }: { data: string }) => Number(/([\d.]+)\n$/.exec(data)?.[1])
    expect(cut.data.startsWith(`mechanism,date,item,est_demand\nA,${date},Sesame,`)).toBe(true)
    expect(demandOf(cut)).toBeGreaterThan(demandOf(whole) + 5)
    const cases = await file(
      'cases.csv',
      [`${date},Sesame,10:00,12`, `${date},Poppy,10:00,900`],
      'date,item,asof,stock',
    )
    const { data } = await run('runout', '--sales', sales, '--cases', cases)
    const [header, sesame = '', poppy] = data.split('\n')
    expect(header).toBe('date,item,asof,stock,t10,t50,t90')
    expect(poppy).toBe(`${date},Poppy,10:00,900,,,`)
    const times = sesame.split(',').slice(4)
    expect(times[0]).toMatch(/^1\d:\d\d$/)
    expect(times).toEqual(times.toSorted((one, other) => (one === '' ? 1 : other === '' ? -1 : one < other ? -1 : 1)))
  })
})

describe('usual hours', () => {
  const soldAt = (...minutes: number[]) => new Map([['Sesame', minutes.map((minute) => ({ minute, pieces: 1 }))]])

  it('[Q14] given weeks that end at one and a single sale late at night, when hours are asked for, then they are the weekday’s usual', () => {
    const hours = new HoursSeen()
    for (let place = 0; place < 28; place += 1) {
      const isSunday = place % 7 === 6
      hours.learn(dateAfter(FIRST, place), soldAt(isSunday ? 500 : 425, place === 21 ? 1400 : isSunday ? 700 : 778))
    }
    expect(hours.of(dateAfter(FIRST, 28))).toEqual({ openMinute: 420, closeMinute: 780 })
    expect(hours.of(dateAfter(FIRST, 34))).toEqual({ openMinute: 495, closeMinute: 705 })
    expect(new HoursSeen().of(FIRST).closeMinute).toBeGreaterThan(new HoursSeen().of(FIRST).openMinute)
  })
})

describe('bad input of the forecast command', () => {
  it.each([
    ['a time', ['2026-01-05T25:00:00,1,Sesame,1'], /bad\.csv:3: ts is '2026-01-05T25:00:00'; it would be a local time/],
    ['a date', ['2026-02-30T08:00:00,1,Sesame,1'], /bad\.csv:3: ts is/],
    ['a quantity', ['2026-01-05T08:00:00,1,Sesame,two'], /bad\.csv:3: qty is 'two'; it would be a whole number/],
    ['half a piece', ['2026-01-05T08:00:00,1,Sesame,0.5'], /bad\.csv:3: qty is '0.5'/],
    ['no item', ['2026-01-05T08:00:00,1,,1'], /bad\.csv:3: item is empty/],
    ['a field too few', ['2026-01-05T08:00:00,1,Sesame'], /bad\.csv:3: this line has another number of fields/],
    ['an open quotation mark', ['2026-01-05T08:00:00,1,"Sesame,1'], /bad\.csv:\d: a quotation mark opens/],
  ])(
    '[Q15] given %s that cannot be, when read, then file and line are named and nothing is written',
    async (_what, rows, sentence) => {
      const bad = await file('bad.csv', ['2026-01-05T07:30:00,1,Sesame,1', ...rows])
      const { status, data, said } = await days([bad], 0, 5)
      expect(said).toMatch(sentence)
      expect({ status, data }).toEqual({ status: 1, data: '' })
    },
  )

  it.each([
    ['another header', 'till.csv', 'time,item,qty\n', /till\.csv:1: the header is 'time,item,qty' and lacks ts, txn/],
    ['an empty file', 'empty.csv', '', /empty\.csv:1: the file is empty/],
    ['no gzip file', 'plain.csv.gz', `${HEADER}\n`, /plain\.csv\.gz: this is no whole gzip file/],
    [
      'a gzip file cut short',
      'cut.csv.gz',
      gzipSync([HEADER, ...tillRows(9).flat()].join('\n')).subarray(0, 300),
      /cut\.csv\.gz: this is no whole gzip/,
    ],
  ])('[Q15] given %s, when read, then it is refused by name', async (_what, name, content, sentence) => {
    await writeFile(join(folder, name), content)
    const { status, data, said } = await days([join(folder, name)], 0, 5)
    expect(said).toMatch(sentence)
    expect({ status, data }).toEqual({ status: 1, data: '' })
  })

  it('[Q15] given a window without a sale, a missing file or one that is a folder, when asked, then it is said', async () => {
    const sales = await file('few.csv', tillRows(3).flat())
    expect(await days([sales], 10, 12)).toMatchObject({
      status: 1,
      data: '',
      said: expect.stringContaining(
        'no day from 2026-01-15 to 2026-01-17 has a sale; the files have sales from 2026-01-05 to',
      ),
    })
    expect((await days([join(folder, 'none.csv')], 0, 2)).said).toMatch(/none\.csv: there is no such file/)
    expect((await days([folder], 0, 2)).said).toMatch(/this is a folder/)
    expect((await days([sales], 2, 0)).said).toMatch(/--to is 2026-01-05; it would not be before --from/)
    expect((await days([sales], 0, 2, '--asof', '9:00')).said).toMatch(
      /--asof is '9:00'; it would be a time like 10:00/,
    )
  })

  it.each([
    [['weeks'], /'weeks' is no task; there are days, soldout, runout/],
    [['days', '--item', 'x'], /--item is no option of days; there are --sales/],
    [['days', '--sales'], /--sales has no value/],
    [['days', '--from', '2026-01-05', '2026-01-06'], /'2026-01-06' belongs to no option/],
    [['runout', '--cases', 'a', '--cases', 'b'], /--cases stands 2 times/],
    [['soldout', '--sales', 'x'], /soldout needs --mechanism/],
  ])('[Q15] given the command %j, when run, then it says what there is, with status 2', async (args, sentence) => {
    const { status, data, said } = await run(...args)
    expect(said).toMatch(sentence)
    expect({ status, data }).toEqual({ status: 2, data: '' })
  })

  it('[Q15] given the real command, when run and when its input is bad, then data is on standard output alone, and the status tells', async () => {
    const sales = await file('real.csv', tillRows(8).flat())
    const command = ['run', '-s', 'forecast', '--', 'days', '--sales', sales, '--items', join(folder, 'items.csv')]
    const good = await promisify(execFile)('npm', [...command, '--from', FIRST, '--to', FIRST])
    expect(good.stdout.split('\n')).toHaveLength(1 + 3 + 1)
    expect(good.stderr).toBe('8 open days\n')
    const bad = promisify(execFile)('npm', [...command, '--from', 'Monday', '--to', FIRST])
    await expect(bad).rejects.toMatchObject({
      code: 1,
      stdout: '',
      stderr: expect.stringContaining("--from is 'Monday'"),
    })
  })
})
