import { readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { describe, expect, it, onTestFinished, vi } from 'vitest'
import type { ClosedDayTexts } from '../../server/history/history.ts'
import { DayBook } from '../../server/work/day-book.ts'
import { Feed } from '../../server/work/feed.ts'
import type { WorkDesk } from '../../server/work/work-desk.ts'
import { WorkFault, WorkStopped, workHere } from '../../server/work/work-desk.ts'
import { WorkHost } from '../../server/work/work-host.ts'
import { workThread } from '../../server/work/work-thread.ts'
import { textOfDay } from '../../shared-core/demand/day-text.ts'
import type { Today } from '../../shared-core/demand/today.ts'
import { LineTally } from '../../shared-core/line/line-tally.ts'
import { at } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'
import { tempFolder } from './support/temp-folder.ts'

const START = { salesFile: ':memory:' }

/** A thread that says back what it is asked, forgets to answer, breaks, or ends. */
const PROGRAM = `
import { parentPort } from 'node:worker_threads'
parentPort.on('message', ({ type, id, asked }) => {
  if (type === 'end') return parentPort.close()
  if (type === 'ping') return parentPort.postMessage('pong')
  if (asked === 'hang') for (;;);
  if (asked === 'end at once') process.exit(3)
  if (asked === 'throw') throw new Error('out of dough')
  if (asked === 'fault') return parentPort.postMessage({ id, ok: false, fault: 'Error: two rings\\n  at once' })
  if (asked !== 'never') parentPort.postMessage({ id, ok: true, answer: { said: asked } })
})`

function threadOf(again: () => boolean = () => false, isHung: () => boolean = () => false) {
  const file = join(tempFolder(), 'echo.mjs')
  writeFileSync(file, PROGRAM)
  const log: string[] = []
  const note = (_details: object, message: string) => void log.push(message)
  const desk = workThread({
    start: START,
    program: pathToFileURL(file),
    log: { error: note, warn: note },
    isDue: again,
    isHung,
  })
  onTestFinished(() => desk.close())
  const ask = (asked: string) => desk.ask('shop', asked as never) as Promise<unknown>
  return { desk, ask, log }
}

/** A closed day on which this was sold of sesame. */
function dayText(date: string, pieces: number): string {
  const sold = Array.from({ length: pieces / 2 }, (_, n) => ({ minute: 370 + n * 10, pieces: 2 }))
  const item = { id: 'sesame', sold, allotted: [], kitchen: sold.slice(0, pieces / 8), unseen: 0, gone: [] }
  const items = [{ ...item, baked: 60, left: 60 - pieces, wasted: 0, given: 0, ordered: null }]
  return textOfDay({ date, openMinute: 360, closeMinute: 900, isClosed: true, items, wanted: [] })
}

const dates = (count: number) => Array.from({ length: count }, (_, n) => `2026-11-${String(n + 1).padStart(2, '0')}`)

describe('the thread for advice', () => {
  it('[Q109] given several questions, when answered, then each has its own', async () => {
    const { ask } = threadOf()
    expect(await Promise.all(['a', 'b'].map(ask))).toEqual([{ said: 'a' }, { said: 'b' }])
  })

  it('[Q109] given a fault of ours, when asked, then this question fails, the log has it, and the next one is answered', async () => {
    const { ask, log } = threadOf()
    await expect(ask('fault')).rejects.toThrow(new WorkFault('Error: two rings'))
    expect(await ask('on')).toEqual({ said: 'on' })
    expect(log).toEqual(['a question to the advice thread failed'])
  })

  it.each(['end at once', 'throw'])(
    '[Q109] given a thread that ends (%s), when it does, then what waits is refused, health says so, and it is begun again',
    async (how) => {
      let isDue = false
      const { desk, ask, log } = threadOf(() => isDue)
      let begun = 0
      desk.onBegun(() => {
        begun += 1
      })
      const waiting = ask('never')
      const last = ask(how)
      await expect(waiting).rejects.toThrow(WorkStopped)
      await expect(last).rejects.toThrow(WorkStopped)
      await expect(ask('anything')).rejects.toThrow(WorkStopped)
      expect(desk.reasons()).toMatchObject([{ code: 'advice-stopped', level: 'warning' }])
      expect(log).toContain('the advice thread has ended; it is begun again')
      // It does not take a core by being begun at once.
      desk.tick()
      expect(begun).toBe(1)
      isDue = true
      desk.tick()
      expect(begun).toBe(2)
      expect(await ask('again')).toEqual({ said: 'again' })
      expect(desk.reasons()).toEqual([])
    },
  )

  it('[Q109] given a thread that hangs, when it has been silent too long, then it is ended, what waits is refused, and it is begun again', async () => {
    let isHung = false
    const { desk, ask } = threadOf(
      () => true,
      () => isHung,
    )
    await ask('on')
    // Pinged while it goes on, it is left alone.
    isHung = true
    desk.tick()
    expect(await ask('still')).toEqual({ said: 'still' })
    const hung = ask('hang')
    desk.tick()
    desk.tick()
    await expect(hung).rejects.toThrow(WorkStopped)
    expect(desk.reasons()).toMatchObject([{ params: { why: 'it did not answer any more' } }])
    desk.tick()
    expect(await ask('again')).toEqual({ said: 'again' })
  })

  it('[Q109] given a program that is missing, when begun, then questions are refused and health says what to do', async () => {
    const log = { error: () => undefined, warn: () => undefined }
    const desk = workThread({ start: START, program: pathToFileURL(join(tempFolder(), 'none.mjs')), log })
    await expect(desk.ask('shop', shopWith())).rejects.toThrow(WorkStopped)
    expect(desk.reasons()[0]?.text).toMatch(/none\.mjs is missing; build again/)
    await desk.close()
  })

  it('[Q109] given a thread that is busy, when closed, then it ends and what waits is refused', async () => {
    const { desk, ask } = threadOf()
    const waiting = ask('never')
    await Promise.all([desk.close(), expect(waiting).rejects.toThrow(WorkStopped)])
    await expect(ask('a')).rejects.toThrow(WorkStopped)
  })
})

describe('the days of a till', () => {
  it('[Q110] given other hours in the set-up, when asked for again, then they go by these at once', async () => {
    const shop = shopWith()
    const later = { ...shop, hours: { ...shop.hours, openMinute: shop.hours.openMinute + 60 } }
    const book = new DayBook(async () => undefined)
    book.setShop(shop)
    // As the till's own days do, these go by the shop of now.
    book.setTill({
      range: () => ({ from: '2026-11-02', to: '2026-11-02' }),
      salesDays: (date) => [{ ...book.asked(date), items: new Map() }],
    })
    book.tellDays({ days: [], openDate: null, today: '2026-11-20', isWhole: true })
    const opens = async () => (await book.days()).map(({ openMinute }) => openMinute)
    expect(await opens()).toEqual([shop.hours.openMinute])
    book.setShop(later)
    expect(await opens()).toEqual([shop.hours.openMinute + 60])
  })
})

/** A history with so many closed days. */
const LINE = JSON.stringify(new LineTally().day())

function historyWith(days: ClosedDayTexts[], openDate: string | null = null) {
  let changed: ClosedDayTexts[] = []
  return {
    days,
    change: (one: ClosedDayTexts) => {
      changed.push(one)
    },
    textsAfter: (number: number, most: number) => days.filter((day) => day.number > number).slice(0, most),
    takeChanged: () => {
      const taken = changed
      changed = []
      return taken
    },
    today: <Result>(look: (state: never, sales: never, line: never) => Result) =>
      openDate === null ? null : look(null as never, { date: openDate } as never, null as never),
  }
}

/** A desk that notes what it is told, and can be begun anew. */
function notingDesk() {
  const asked: [string, unknown][] = []
  let begun: () => void = () => undefined
  let isGone = false
  const desk: WorkDesk = {
    ask: async (kind, what) => {
      if (isGone) throw new WorkStopped('gone')
      asked.push([kind, what])
      return undefined as never
    },
    onBegun: (run) => {
      begun = run
    },
    tick: () => undefined,
    reasons: () => [],
    close: async () => undefined,
  }
  return {
    desk,
    asked,
    begin: () => begun(),
    goes: (gone: boolean) => {
      isGone = gone
    },
  }
}

describe('what the thread is told of the shop', () => {
  const log = { error: () => undefined }
  const many = Array.from({ length: 70 }, (_, n) => ({ number: n + 1, texts: { sales: `day ${n + 1}`, line: LINE } }))

  it('[Q109] given a thread that begins, when told, then the set-up, then all days in pages; begun anew, all again', async () => {
    const { desk, asked, begin } = notingDesk()
    const shop = shopWith()
    const feed = new Feed({
      desk,
      history: historyWith(many, '2026-11-24'),
      shop: () => shop,
      today: () => null,
      onTold: () => undefined,
      log,
    })
    for (let times = 0; times < 2; times += 1) {
      asked.length = 0
      begin()
      await feed.tell()
      expect(asked.map(([kind]) => kind)).toEqual(['shop', 'journalDays', 'journalDays', 'journalDays'])
      const pages = asked
        .slice(1)
        .map(([, what]) => what as { days: ClosedDayTexts[]; isWhole: boolean; openDate: string })
      expect(pages.flatMap(({ days }) => days)).toEqual(many)
      expect(pages.map(({ isWhole }) => isWhole)).toEqual([true, false, false])
      expect(pages[0]?.openDate).toBe('2026-11-24')
    }
  })

  it('[Q109] given news, when told, then these alone; nothing new, then nothing', async () => {
    const { desk, asked, begin } = notingDesk()
    const history = historyWith(many)
    let shop = shopWith()
    const feed = new Feed({ desk, history, shop: () => shop, today: () => null, onTold: () => undefined, log })
    begin()
    await feed.tell()
    asked.length = 0
    await feed.tell()
    expect(asked).toEqual([])
    history.change({ number: 70, texts: null })
    shop = shopWith({ profile: { ...shop.profile, name: 'Other' } })
    await feed.tell()
    expect(asked).toEqual([
      ['shop', shop],
      ['journalDays', { days: [{ number: 70, texts: null }], openDate: null, today: null, isWhole: false }],
    ])
  })

  it('[Q109] given a thread that ends while it is told, when the next one begins, then it hears everything', async () => {
    const { desk, asked, begin, goes } = notingDesk()
    const shop = shopWith()
    const feed = new Feed({
      desk,
      history: historyWith(many),
      shop: () => shop,
      today: () => null,
      onTold: () => undefined,
      log,
    })
    goes(true)
    begin()
    await feed.tell()
    goes(false)
    begin()
    await feed.tell()
    await feed.tell()
    expect(asked.filter(([kind]) => kind === 'shop')).toHaveLength(1)
    expect(asked.flatMap(([, what]) => (what as { days?: ClosedDayTexts[] }).days ?? [])).toEqual(many)
  })
})

const NOON = at('12:00')

/** The middle of what is still asked for of sesame, at opening. */
async function asksFor(host: WorkHost | WorkDesk, date = '2026-11-30'): Promise<number> {
  const item = { id: 'sesame', sold: [], unseen: 0, gone: [], stock: { mean: 10, doubt: 0 }, more: [], kept: 0 }
  const day = {
    date,
    openMinute: 360,
    closeMinute: 900,
    nowMinute: 360,
    changeoverMinute: null,
    lastLoadInMinute: null,
  }
  const today: Today = { ...day, bakingIsOver: false, chilled: null, items: [item] }
  const asked = { today, noonMs: NOON, line: null, before: null, isPlanKept: false, seq: 1 }
  const advised = await ('answer' in host ? host.answer('advise', asked) : host.ask('advise', asked))
  return advised?.outlook.varieties[0]?.rest.q50 ?? Number.NaN
}

async function hostWith(days: readonly ClosedDayTexts[], openDate: string | null = null): Promise<WorkHost> {
  const host = await WorkHost.begin(START)
  onTestFinished(() => host.end())
  await host.answer('shop', shopWith())
  await host.answer('journalDays', { days, openDate, today: null, isWhole: true })
  return host
}

describe('what days teach', () => {
  const forty = dates(20).map((date, n) => ({ number: n + 1, texts: { sales: dayText(date, 40), line: LINE } }))

  it('[Q110] given weeks of forty a day, when looked ahead, then about that many with the kitchen’s; without a day or a guess nothing is said', async () => {
    const known = await asksFor(await hostWith(forty))
    expect(known).toBeGreaterThan(45)
    expect(known).toBeLessThan(55)
    expect(await asksFor(await hostWith([]))).toBeNaN()
  })

  it('[Q110] given a day that is open, when it has many, then it teaches nothing until it is over', async () => {
    const odd = { number: 21, texts: { sales: dayText('2026-11-21', 400), line: LINE } }
    const host = await hostWith([...forty, odd], '2026-11-21')
    expect(await asksFor(host)).toBe(await asksFor(await hostWith(forty)))
    expect((await host.answer('historyDay', { date: '2026-11-21' })).items).toEqual([])
    await host.answer('journalDays', { days: [], openDate: null, today: null, isWhole: false })
    expect((await host.answer('historyDay', { date: '2026-11-21' })).items).not.toEqual([])
    const over = await asksFor(await hostWith([...forty, odd]))
    await expect.poll(() => asksFor(host)).toBe(over)
  })

  it('[Q110] given a day that is reopened and closed otherwise, when learnt, then as if it had been so from the first', async () => {
    const changed = forty.map((day, n) =>
      n >= 12 ? { ...day, texts: { sales: dayText(`2026-11-${n + 1}`, 8), line: LINE } } : day,
    )
    const host = await hostWith(forty)
    await asksFor(host)
    await host.answer('journalDays', {
      days: [{ number: 20, texts: null }],
      openDate: '2026-11-20',
      today: null,
      isWhole: false,
    })
    await host.answer('journalDays', { days: changed.slice(12), openDate: null, today: null, isWhole: false })
    const fromTheFirst = await asksFor(await hostWith(changed))
    expect(fromTheFirst).not.toBe(await asksFor(await hostWith(forty)))
    await expect.poll(() => asksFor(host)).toBe(fromTheFirst)
  })

  it('[Q110] given days on which nobody said what went, when learnt, then as if there were none', async () => {
    const silent = forty.map((day, n) =>
      n % 2 === 0
        ? { ...day, texts: { sales: dayText(`2026-11-${String(n + 1).padStart(2, '0')}`, 0), line: LINE } }
        : day,
    )
    const told = silent.filter((_, n) => n % 2 === 1)
    expect(await asksFor(await hostWith(silent))).toBe(await asksFor(await hostWith(told)))
  })

  it('[Q109] given a host without a folder, when it needs one, then only from then on and until it ends', async () => {
    const temp = tempFolder()
    vi.stubEnv('TMPDIR', temp)
    onTestFinished(() => void vi.unstubAllEnvs())
    const host = await WorkHost.begin(START)
    expect(readdirSync(temp)).toEqual([])
    expect(await host.answer('salesFolder', null)).toBe(join(temp, readdirSync(temp)[0] ?? ''))
    host.end()
    expect(readdirSync(temp)).toEqual([])
  })

  it('[Q109] given the same without a thread, when asked, then the same answers, and none when it is closed', async () => {
    const desk = workHere(START)
    await desk.ask('shop', shopWith())
    await desk.ask('journalDays', { days: forty, openDate: null, today: null, isWhole: true })
    expect(await asksFor(desk)).toBe(await asksFor(await hostWith(forty)))
    await desk.close()
    await expect(asksFor(desk)).rejects.toThrow(WorkStopped)
  })
})
