/** What the desk says while an order is typed. */
export interface OrderFormWords {
  readonly newTitle: string
  changeTitle(mark: string): string
  readonly parts: { readonly [part in 'when' | 'what' | 'made' | 'who']: string }
  readonly way: string
  readonly date: string
  readonly time: string
  readonly run: string
  readonly noRun: string
  readonly stop: string
  /** When somebody waits here. */
  readonly dueAsPromised: string
  readonly variety: string
  readonly dozens: string
  /** @example "13 make a dozen here." */
  dozenOf(pieces: number): string
  readonly pieces: string
  readonly addLine: string
  readonly addMixed: string
  readonly leaveOut: string
  /** @example "Line 2: leave it out" */
  lineOf(line: number, what: string): string
  readonly without: string
  readonly addWithout: string
  readonly total: (pieces: string) => string
  readonly item: string
  readonly addItem: string
  readonly bagel: string
  readonly times: string
  readonly allergies: string
  readonly addAllergy: string
  readonly leave: string
  readonly more: string
  readonly begunStays: string
  readonly noMenu: string
  readonly mark: string
  readonly markHint: string
  readonly standingMarkHint: string
  readonly name: string
  readonly phone: string
  readonly note: string
  readonly detailsHint: string
  readonly paid: string
  readonly take: string
  readonly takeAtRisk: string
  readonly save: string
  readonly back: string
  readonly missing: { readonly [what in 'due' | 'pieces' | 'bagel' | 'mark']: string }
  readonly holds: string
  readonly holdsNot: string
  readonly isPast: string
  /** Takes the earliest time over. */
  readonly useEarliest: string
  readonly useNextDay: string
  readonly shopClosed: string
  readonly unknown: string
  /** Mark of the order taken. */
  taken(mark: string): string
}
