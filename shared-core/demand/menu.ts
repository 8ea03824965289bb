/**
 * Whether an item is on the menu, where nobody says so: a till's file knows only what was sold. Items come and go for
 * days or months, and a mean that decays slowly is wrong both ways. So the menu is a hidden two-state chain (on, off) of
 * each item: a day with a sale was on, a day without is on by Bayes' rule with the chance that an item on the menu sells
 * none. How often it leaves and returns is learnt from expected moves, and by weekday ("Saturdays only").
 * Source: Rabiner, Proc. IEEE 77 (1989) 257–286, section III, the forward procedure.
 */
export interface Menu {
  /** Belief after the last day learnt. */
  on: number
  leaves: number
  onDays: number
  returns: number
  offDays: number
  /** By weekday, Monday first: days on and days learnt, decayed. */
  readonly onBy: Float64Array
  readonly daysBy: Float64Array
}

/** An item leaves the menu about twice a year and is back within a week: common practice, no source; worth few days. */
const LEAVES = 0.02
const RETURNS = 0.2
const USUAL_WORTH_DAYS = 5
/** Chains change slowly: half after so many days. */
const KEEP_MOVES = 0.5 ** (1 / 200)
const KEEP_WEEKDAYS = 0.5 ** (1 / 120)
/** Days on a weekday that its own share of days on the menu is shrunk by. Measured: 2 to 8 do alike. */
const WEEKDAY_WORTH_DAYS = 2
/** No belief is certain: a day may always be the first. */
const LEAST = 0.002

export function newMenu(): Menu {
  return {
    on: 1,
    leaves: 0,
    onDays: 0,
    returns: 0,
    offDays: 0,
    onBy: new Float64Array(7),
    daysBy: new Float64Array(7),
  }
}

/**
 * The chance that an item is on the menu.
 * @param weekday 0 is Monday @param steps open days since the last one learnt, 1 or more
 */
export function onMenu(menu: Menu, weekday: number, steps: number): number {
  if (sum(menu.daysBy) === 0) return 1 - LEAST
  const { leave, comeBack } = moves(menu)
  let on = menu.on
  for (let step = 0; step < steps; step += 1) on = on * (1 - leave) + (1 - on) * comeBack
  const odds = ((on + 1e-9) / (1 - on + 1e-9)) * weekdayOdds(menu, weekday)
  return odds / (1 + odds)
}

/**
 * How likely an item was on the menu on a day.
 * @param expected the belief before the day, as `onMenu` gives it @param noneSold chance to sell none when on the menu
 */
export function wasOn(expected: number, hasSold: boolean, noneSold: number): number {
  return hasSold ? 1 : (expected * noneSold) / (expected * noneSold + 1 - expected)
}

/** Takes in a day. @param expected the belief before it, as `onMenu` gives it */
export function learnMenu(
  menu: Menu,
  weekday: number,
  expected: number,
  { hasSold, noneSold }: { readonly hasSold: boolean; readonly noneSold: number },
): void {
  const { leave, comeBack } = moves(menu)
  const on = wasOn(expected, hasSold, noneSold)
  const [stayed, cameBack] = [menu.on * (1 - leave), (1 - menu.on) * comeBack]
  const [left, stayedOff] = [menu.on * leave, (1 - menu.on) * (1 - comeBack)]
  menu.leaves = menu.leaves * KEEP_MOVES + (1 - on) * (left / (left + stayedOff))
  menu.onDays = menu.onDays * KEEP_MOVES + menu.on
  menu.returns = menu.returns * KEEP_MOVES + on * (cameBack / (cameBack + stayed))
  menu.offDays = menu.offDays * KEEP_MOVES + 1 - menu.on
  for (let each = 0; each < 7; each += 1) {
    menu.onBy[each] = (menu.onBy[each] ?? 0) * KEEP_WEEKDAYS + (each === weekday ? on : 0)
    menu.daysBy[each] = (menu.daysBy[each] ?? 0) * KEEP_WEEKDAYS + (each === weekday ? 1 : 0)
  }
  menu.on = on
}

function moves({ leaves, onDays, returns, offDays }: Menu): { leave: number; comeBack: number } {
  return {
    leave: (leaves + USUAL_WORTH_DAYS * LEAVES) / (onDays + USUAL_WORTH_DAYS),
    comeBack: (returns + USUAL_WORTH_DAYS * RETURNS) / (offDays + USUAL_WORTH_DAYS),
  }
}

/** How much likelier than on others an item is on the menu on this weekday, as a quotient of odds. */
function weekdayOdds({ onBy, daysBy }: Menu, weekday: number): number {
  const usual = bounded((sum(onBy) + 0.9) / (sum(daysBy) + 1))
  const here = bounded(
    ((onBy[weekday] ?? 0) + WEEKDAY_WORTH_DAYS * usual) / ((daysBy[weekday] ?? 0) + WEEKDAY_WORTH_DAYS),
  )
  return (here * (1 - usual)) / ((1 - here) * usual)
}

function bounded(chance: number): number {
  return Math.min(1 - LEAST, Math.max(LEAST, chance))
}

function sum(values: Float64Array): number {
  let total = 0
  for (const value of values) total += value
  return total
}
