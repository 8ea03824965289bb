import { outlookOf } from '../../shared-core/demand/outlook-of.ts'
import type { Plan } from '../../shared-core/live/plan.ts'
import { lessOrdered } from '../../shared-core/plan/less-ordered.ts'
import { namedOrders } from '../../shared-core/plan/orders-given.ts'
import type { PlanAsked } from '../../shared-core/plan/plan-asked.ts'
import { planDay } from '../../shared-core/plan/plan-day.ts'
import { whatIf } from '../../shared-core/plan/what-if.ts'
import { withComing } from '../../shared-core/plan/with-coming.ts'
import { planTimed } from '../plan/plan-instance.ts'
import type { AdviseAsked, Advised, AdviseQuestions, PlanOf } from './advise-questions.ts'
import { DayDemands, knownOf } from './day-demand.ts'
import type { Handlers } from './questions.ts'
import type { Work } from './work.ts'

export function adviseHandlers(work: Work): Handlers<AdviseQuestions> {
  const demands = new DayDemands(work.book)
  const planning = { work, demands }
  return {
    advise: (asked) => advise(planning, asked),
    plan: async (asked) => {
      const given = await givenFor(planning, asked)
      return given === null ? null : planDay(given, asked.before, asked.seq)
    },
    planTry: async ({ freeLine, ...asked }) => {
      const given = await givenFor(planning, asked)
      if (given === null) return null
      const plan = planDay(given, null, asked.seq)
      await work.breathe()
      return { plan, free: planDay({ ...given, line: freeLine }, null, asked.seq).figures }
    },
    whatIf: async ({ change, ...asked }) => {
      const given = await givenFor(planning, asked)
      return given === null ? null : whatIf(given, change)
    },
    bakeOff: (given) => planTimed(given),
  }
}

interface Planning {
  readonly work: Work
  readonly demands: DayDemands
}

/** The plan first: the outlook is of the day as it goes when the plan is followed. */
async function advise({ work, demands }: Planning, asked: AdviseAsked): Promise<Advised | null> {
  const { book, breathe } = work
  const { today, noonMs, line, before, seq, isPlanKept } = asked
  const { shop } = book
  if (shop === null) return null
  const { ahead, rest } = await demands.now(today)
  const kitchen = book.kitchenParts()
  const demand = knownOf(rest, ahead)
  const planned = line === null ? null : { shop, line, demand, kitchen, date: today.date, noonMs }
  let plan: Plan | null = isPlanKept ? before : null
  const startMs = performance.now()
  if (!isPlanKept && planned !== null && demand.size > 0) plan = planDay(planned, before, seq)
  const planMs = performance.now() - startMs
  await breathe()
  const coming = withComing(today, plan, shop, noonMs)
  const free = planned === null ? coming : lessOrdered(coming, namedOrders(planned), noonMs)
  const outlook = outlookOf({ shop, today: free, noonMs, ahead, rest, kitchen })
  return { outlook, plan, planMs }
}

/** What a plan is made of; null: nothing is known of what will be asked for. */
async function givenFor({ work: { book }, demands }: Planning, asked: PlanOf): Promise<PlanAsked | null> {
  const { line, noonMs } = asked
  const { shop } = book
  const { date } = line
  // It was sold and closed: nothing of it is to come.
  const isPast = date !== book.openDate && book.journalDay(date) !== null
  if (shop === null || isPast) return null
  const demand = await demandFor(demands, asked)
  if (demand.size === 0) return null
  return { shop, line, demand, kitchen: book.kitchenParts(), date, noonMs }
}

async function demandFor(demands: DayDemands, { line, today }: PlanOf): Promise<PlanAsked['demand']> {
  if (today === null) {
    const ahead = await demands.ahead(line.date)
    return knownOf(ahead, ahead)
  }
  const { ahead, rest } = await demands.now(today)
  return knownOf(rest, ahead)
}
