import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import { isSame, standing } from '../../../shared-core/shop/set-up-diff.ts'
import type { KettleCare, Shop, Windows } from '../../../shared-core/shop/shop.ts'
import { WINDOW_STAGES } from '../../../shared-core/shop/stages.ts'
import { fieldText } from './field-text.ts'
import type { Telling } from './say-value.ts'
import { dwellSaid } from './say-value.ts'

/** One entity that changes: what it is, and what becomes of it, line by line. */
export interface ToldChange {
  readonly change: SetUpChange
  readonly what: string
  readonly lines: readonly string[]
}

/** What changes would do to a shop, in words. @param telling with the shop as it will be */
export function toldChanges(shop: Shop, changes: readonly SetUpChange[], telling: Telling): readonly ToldChange[] {
  return changes.map((change) => ({ change, what: whatOf(change, telling), lines: linesOf(shop, change, telling) }))
}

function whatOf(change: SetUpChange, { say }: Telling): string {
  if (change.entity === 'weekday')
    return say.options.weekday[Number(change.value.id) - 1] ?? say.entity('weekday', null)
  const name = change.value !== null && 'name' in change.value ? change.value.name : null
  return say.entity(change.entity, change.entity === 'profile' ? null : name)
}

function linesOf(shop: Shop, change: SetUpChange, telling: Telling): readonly string[] {
  const { save, form } = telling.say
  const what = whatOf(change, telling)
  const [before, after] = [recordOf(standing(shop, change)), recordOf(change.value)]
  if (after === null) return [form.notSaid]
  if (before === null) return [change.entity === 'weekday' ? weekdayText(change, telling) : save.added(what)]
  if (before.retired !== after.retired) {
    if (change.entity === 'weekday') return [weekdayText(change, telling)]
    return [after.retired === true ? save.retired(what) : save.back(what)]
  }
  if (change.entity === 'windows') return windowLines(windowsIn(before), change.value, telling)
  const fields = Object.keys({ ...before, ...after }).filter((field) => !isAlike(before[field], after[field]))
  return fields.flatMap((field) => fieldLines(change, field, { before: before[field], after: after[field] }, telling))
}

interface Became {
  readonly before: unknown
  readonly after: unknown
}

function fieldLines(change: SetUpChange, field: string, { before, after }: Became, telling: Telling) {
  const { save, fields } = telling.say
  if (field === 'order') return [save.moved]
  if (field === 'windows') return windowLines(windowsIn(before), windowsIn(after), telling)
  if (field === 'care') return careLines(before, after, telling)
  const labels: Readonly<Record<string, string>> = fields[change.entity]
  const [was, is] = [before, after].map((value) => fieldText(change, field, value, telling) ?? '')
  return [save.became(labels[field] ?? field, was ?? '', is ?? '')]
}

function windowLines(before: Windows, after: Windows, telling: Telling): string[] {
  const { say } = telling
  const text = (windows: Windows, stage: (typeof WINDOW_STAGES)[number]) => {
    const window = windows[stage]
    return window === undefined ? say.form.asShop : dwellSaid(window, telling)
  }
  return WINDOW_STAGES.filter((stage) => !isAlike(before[stage], after[stage])).map((stage) =>
    say.save.became(say.options.window[stage], text(before, stage), text(after, stage)),
  )
}

const CARES: readonly KettleCare[] = ['topUp', 'malt', 'skim', 'change']

function careLines(before: unknown, after: unknown, { say }: Telling): string[] {
  const [was, is] = [recordOf(before) ?? {}, recordOf(after) ?? {}]
  const text = (value: unknown) => (typeof value === 'number' ? String(value) : say.form.notSaid)
  return CARES.filter((care) => was[care] !== is[care]).map((care) =>
    say.save.became(say.options.care[care], text(was[care]), text(is[care])),
  )
}

function weekdayText(change: Extract<SetUpChange, { entity: 'weekday' }>, telling: Telling): string {
  const { retired, hours } = change.value
  return retired ? telling.say.form.asShop : (fieldText(change, 'hours', hours, telling) ?? '')
}

/** Windows come out of an entity that the core made; what is none is as good as empty. */
function windowsIn(value: unknown): Windows {
  return (recordOf(value) ?? {}) as Windows
}

function recordOf(value: unknown): Readonly<Record<string, unknown>> | null {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? { ...value } : null
}

/** What is left out is as good as null. */
function isAlike(a: unknown, b: unknown): boolean {
  return isSame(a ?? null, b ?? null)
}
