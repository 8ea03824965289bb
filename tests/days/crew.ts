import type { CommandId } from '../../shared-core/ids.ts'
import type { Chance } from './chance.ts'
import type { Checks } from './checks.ts'
import type { DayPlan } from './day-plan.ts'
import { partOfDay } from './day-plan.ts'
import type { Faults } from './faults.ts'
import type { WorldOptions } from './options.ts'
import type { Doing } from './people.ts'
import { nextDoing } from './people.ts'
import type { Schedule } from './schedule.ts'
import type { Screen } from './screens.ts'
import type { Story } from './story.ts'

/** From one tap of the same person to the next. */
const NEXT_TAP_MS = [250, 4_000] as const
const YES_PERMILLE = 600

export interface CrewParts {
  readonly options: WorldOptions
  readonly plan: DayPlan
  readonly schedule: Schedule
  readonly chance: Chance
  readonly faults: Faults
  readonly checks: Checks
  readonly story: Story
  readonly screens: readonly Screen[]
}

/** The people at the screens: each does one small thing after the other, by place and hour. */
export class Crew {
  readonly #parts: CrewParts
  #rests = false

  constructor(parts: CrewParts) {
    this.#parts = parts
  }

  begin(): void {
    for (const screen of this.#parts.screens) this.#workAt(screen, this.#parts.chance.part(screen.who))
  }

  rest(rests: boolean): void {
    const isMorning = this.#rests && !rests
    this.#rests = rests
    if (isMorning)
      for (const screen of this.#parts.screens) this.#workAt(screen, this.#parts.chance.part(`${screen.who} again`))
  }

  #workAt(screen: Screen, chance: Chance): void {
    const { schedule, options } = this.#parts
    schedule.in(chance.between(200, 2 * options.actEveryMs), () => {
      if (this.#rests) return
      this.#act(screen, chance)
      this.#workAt(screen, chance)
    })
  }

  #act(screen: Screen, chance: Chance): void {
    const { sync } = screen
    const { shown, notices } = sync?.view() ?? { shown: null, notices: [] }
    if (sync === null || shown === null || shown.shop === null) return
    const [notice] = notices
    if (notice !== undefined) this.#parts.checks.told(screen, notice.kind)
    if (notice !== undefined && chance.permille(500)) {
      this.#parts.story.tell(screen.who, `answers ${notice.id.slice(0, 6)} ${notice.kind}`)
      if (notice.kind === 'ask' && chance.permille(YES_PERMILLE)) sync.confirm(notice.id)
      else sync.dismiss(notice.id)
      return
    }
    const { plan, schedule } = this.#parts
    const nowMs = schedule.nowMs
    const part = partOfDay(plan, nowMs)
    const { deviceId } = sync
    this.#do(
      screen,
      nextDoing({ shown, shop: shown.shop, role: screen.role, deviceId, part, chance, nowMs }),
      null,
      chance,
    )
  }

  #do(screen: Screen, [act, ...rest]: Doing, lastId: CommandId | null, chance: Chance): void {
    if (act === undefined || this.#rests) return
    const { schedule, checks } = this.#parts
    const isTakeBack = act === 'take-back'
    if (isTakeBack && lastId === null) return
    const id = screen.tap(isTakeBack ? { type: 'takeBack', commandId: lastId as CommandId } : act)
    checks.lookAtShown(screen)
    if (!isTakeBack) this.#somebodyElseToo(screen, act, chance)
    if (rest.length > 0) schedule.in(chance.between(...NEXT_TAP_MS), () => this.#do(screen, rest, id, chance))
  }

  #somebodyElseToo(screen: Screen, act: Exclude<Doing[number], 'take-back'>, chance: Chance): void {
    const { options, faults, screens } = this.#parts
    const isSo = chance.permille(options.samePermille)
    const other = chance.oneOf(screens)
    if (!isSo || other === screen || other.sync?.view().shown == null) return
    if (faults.happens('same-tap', other.who)) other.tap(act)
  }
}
