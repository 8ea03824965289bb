/** What `GET /api/v1/history/sales` answers: a shop's sales by day, weekday and hour. Pieces may have fractions. */
export interface SalesHistoryJson {
  /** Of which the sales are: "all", "dough:ID" or "variety:ID". */
  readonly of: string
  /** The dates of which there is anything at all; null: no sales yet. */
  readonly known: { readonly from: string; readonly to: string; readonly days: number } | null
  /** In order of time; a closed day is not among them. */
  readonly days: readonly HistoryDayJson[]
  /** By ISO weekday, of the days above that were not special. */
  readonly weekdays: readonly HistoryWeekdayJson[]
  /** What a usual hour of a weekday sells. */
  readonly hours: HistoryHoursJson
  /** Null: no day yet. */
  readonly learnt: LearntJson | null
}

export interface HistoryDayJson {
  readonly date: string
  readonly sold: number
  /** Estimated to be lost while there was none. */
  readonly lost: number
  /** Varieties that sold out before the close. */
  readonly soldOut: number
  /** Ids of the set-up's special days. */
  readonly specials: readonly string[]
  /** Of one variety what had been forecast, for the newest year; null: of several, or not judged. */
  readonly said: SaidJson | null
}

/** Quantiles of a forecast, in whole pieces. */
export interface SaidJson {
  readonly q10: number
  readonly q50: number
  readonly q90: number
}

export interface HistoryWeekdayJson {
  readonly weekday: number
  readonly days: number
  readonly sold: number
  readonly lost: number
}

export interface HistoryHoursJson {
  /** The first hour of the day that is told, and how many. */
  readonly fromHour: number
  /** By ISO weekday: pieces sold in each hour, on the mean; null: no such day. */
  readonly weekdays: readonly (readonly number[] | null)[]
  /** The part of what was sold that went at no known time. */
  readonly untimed: number
}

/** What the board made of it. */
export interface LearntJson {
  readonly basis: 'guess' | 'few' | 'many'
  /** Pieces on a usual day, all weekdays alike. */
  readonly level: number
  /** By ISO weekday, around 1; null where the shop does not open. */
  readonly weekdays: readonly (number | null)[]
  readonly specials: readonly LearntSpecialJson[]
}

export interface LearntSpecialJson {
  readonly id: string
  /** What it does to a day's sales, around 1. */
  readonly factor: number
  /** On how many open days it was seen. */
  readonly days: number
}

/** What `GET /api/v1/history/sales/:date` answers. */
export interface HistoryOfDayJson {
  readonly date: string
  readonly openMinute: number
  readonly closeMinute: number
  readonly specials: readonly string[]
  /** The journal has this day: it can be played again. */
  readonly isRecorded: boolean
  readonly items: readonly HistoryItemJson[]
}

export interface HistoryItemJson {
  readonly varietyId: string
  readonly sold: number
  readonly lost: number
  readonly gone: readonly { readonly fromMinute: number; readonly toMinute: number }[]
  /** What had been forecast; null: the day was not judged. */
  readonly said: SaidJson | null
}
