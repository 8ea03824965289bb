/**
 * The bounds of a set-up. Generous for a small shop, tight enough that every screen is laid out and tested with the
 * longest names and the most entities that can come. The numbers are our choice unless a line says otherwise.
 */

/** Characters of a name, in UTF-16 units. A shelf's name stands inside its key, a variety's beside its rod. */
export const NAME_MAX = {
  shop: 40,
  secondMenu: 24,
  shelf: 8,
  dough: 24,
  topping: 24,
  variety: 24,
  station: 16,
  person: 16,
  step: 40,
  ingredient: 24,
  preparation: 24,
  formula: 24,
  mixer: 16,
  kitchenStation: 16,
  portion: 24,
  menuItem: 24,
  run: 24,
  specialDay: 40,
} as const

/** Most of each kind in use at once; retired ones do not count. */
export const IN_USE_MAX = {
  shelf: 12,
  dough: 16,
  topping: 40,
  variety: 60,
  station: 12,
  person: 40,
  step: 40,
  ingredient: 60,
  preparation: 12,
  formula: 24,
  specialDay: 120,
  kitchenStation: 8,
  portion: 60,
  menuItem: 60,
  run: 12,
} as const

/** Most of each kind that a file or shop may hold, the retired ones of many years included. */
export const KEPT_MAX = 500

/** Pieces: a kettle-full, a board, a tray, a shelf. A large deck takes some 12 dozen (common practice, no source). */
export const KETTLE_PIECES_MAX = 500
export const BOARD_PIECES_MAX = 60
export const TRAY_PIECES_MAX = 200
export const SHELF_PIECES_MAX = 1_000
export const BOARDS_MAX = 300
export const FLOOR_BOARDS_MAX = 120

export const CYCLE_MS_MIN = 5_000
export const CYCLE_MS_MAX = 30 * 60_000
export const REWET_MS_MAX = 60 * 60_000
export const HANDLING_MS_MAX = 30 * 60_000
export const RECOVER_MS_MAX = 60 * 60_000
/** Pieces from one care of the kettle to the next. */
export const CARE_PIECES_MAX = 50_000
/** A step lies at most a day from what its list counts from. */
export const STEP_OFFSET_MS_MAX = 24 * 3_600_000
export const SWEEP_MS_MIN = 10 * 60_000
export const SWEEP_MS_MAX = 12 * 3_600_000
/** A freezer and a wood-fired floor, in either unit. */
export const DEGREES_MIN = -60
export const DEGREES_MAX = 1_200
/** A tonne in grams. */
export const WEIGHT_THOUSANDTHS_MAX = 1_000_000_000
export const COOLER_TRAYS_MAX = 2_000
/** No stage lasts longer: a dough chilled for two weeks is a mistake in the unit. */
export const WINDOW_MS_MAX = 14 * 24 * 3_600_000

/** Lines of a formula or preparation, preparations of a formula, ingredients of a topping. */
export const LINES_MAX = 30
export const PREPARATIONS_OF_MAX = 4
export const MADE_OF_MAX = 12
/** In percent. Raisins may weigh as much as half of the flour; nothing weighs three times as much. */
export const PERCENT_MAX = 300
export const LOSS_PERCENT_MAX = 30
/** What is read in a dough room, in either unit: from ice to boiling water. */
export const ROOM_DEGREES_MIN = -20
export const ROOM_DEGREES_MAX = 220
export const FRICTION_DEGREES_MAX = 120
/** A dough below or above is a mistake in the unit: yeast sleeps at the one and dies at the other. In °C. */
export const DOUGH_CELSIUS_MIN = 5
export const DOUGH_CELSIUS_MAX = 45
/** One piece as shaped or labelled, in milligrams: a bite, and a bagel for a party. */
export const PIECE_MG_MIN = 5_000
export const PIECE_MG_MAX = 3_000_000
export const MIX_MS_MAX = 60 * 60_000
export const REST_MS_MAX = 12 * 3_600_000
export const WASH_MS_MAX = 2 * 3_600_000
export const COOLS_IN_MS_MAX = 12 * 3_600_000
export const FOLDS_MAX = 8
export const STRENGTH_MAX = 9
export const DAYS_AHEAD_MAX = 3
export const DIVIDER_PIECES_MAX = 20_000
export const HAND_PIECES_MAX = 3_000
export const ROLLERS_MAX = 20
/** Of a bag or case of an ingredient. */
export const PRICE_CENTS_MAX = 1_000_000

/** Hands at the oven's door for one load; a turn of a rotating oven. */
export const DOOR_MS_MAX = 30 * 60_000
export const BOARD_WAIT_MS_MAX = 2 * 3_600_000
export const TOLERANCE_MS_MAX = 30 * 60_000
/** Pieces that are boarded together: a large board is the most that anybody fills at once. */
export const UNIT_PIECES_MAX = BOARD_PIECES_MAX
/** People who are there at once, and how often that changes in a day. */
export const PEOPLE_MAX = 99
export const PEOPLE_ROWS_MAX = 24
/** Pieces of a variety on show. */
export const SHOW_LEAST_MAX = 1_000

export const CENTS_MAX = 100_000
/** Spans of one special day: one a year for a lifetime of shops, or some years of every snowfall. */
export const SPANS_MAX = 400
/** Dates of special days: sales of before cannot be there, and nobody plans beyond. */
export const DATE_MIN = '2000-01-01'
export const DATE_MAX = '2099-12-31'
/** Pieces of a variety on a usual day, day-old pieces that a day sells. */
export const USUAL_MAX = 20_000
export const DAY_OLD_SELLS_MAX = 5_000
export const MINUTE_MAX = 24 * 60 - 1
export const ORDER_MAX = 100_000

/** A dozen is 12, and 13 where the shop gives a baker's dozen; others have their own ways. */
export const DOZEN_PIECES_MIN = 10
export const DOZEN_PIECES_MAX = 14
/** Pieces of a variety that stay out for walk-ins, pieces of one box or tub. */
export const WALK_IN_LEAST_MAX = 500
export const BOX_PIECES_MAX = 500
export const NO_SHOW_MS_MIN = 5 * 60_000
export const NO_SHOW_MS_MAX = 12 * 3_600_000
/** Names and phone numbers are no longer needed then, whatever an order was about. */
export const FORGET_DAYS_MAX = 400
export const MADE_IN_MS_MIN = 60_000
export const MADE_IN_MS_MAX = 2 * 3_600_000
export const SLICE_COOL_MS_MAX = 4 * 3_600_000
export const PACK_MS_MAX = 60 * 60_000
/** From the van's one stop to the next, and loading it. */
export const STOP_MS_MAX = 4 * 3_600_000
export const LOAD_MS_MAX = 2 * 3_600_000

/** What is made to order: at a station, in the oven, out of portions. */
export const HANDS_MAX = 20
export const SLOTS_MAX = 40
export const ITEM_STEPS_MAX = 3
export const TURNS_MAX = 3
export const TAKES_MS_MIN = 1_000
export const TAKES_MS_MAX = 60 * 60_000
export const PULL_MS_MAX = 24 * 3_600_000
export const TRAY_PORTIONS_MAX = 500
export const PORTIONS_OF_MAX = 12
export const PORTIONS_EACH_MAX = 20
