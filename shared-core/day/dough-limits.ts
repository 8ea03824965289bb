/** Lines of one day of boiling, by dough or variety. */
export const WANTED_LINES_MAX = 200
/** Days of which something is wanted: holidays are typed in far ahead, but not for ever. */
export const WANTED_DATES_MAX = 60
export const DAYS_AHEAD_MAX = 366
/** Mixes of one day of boiling; a large shop mixes some 20 (common practice, no source). */
export const DAY_MIXES_MAX = 60
/** Mixes of all days together: those that are planned, and those of the day that have ended. */
export const MIXES_MAX = 200
export const FOLDS_MAX = 20
/** Thousandths of a degree, a freezer and boiling water in either unit: nothing in a dough room is colder or hotter. */
export const THOUSANDTHS_MIN = -40_000
export const THOUSANDTHS_MAX = 220_000
/** A pre-ferment or two and some soakers a day, with those of the days ahead. */
export const BUILDS_MAX = 100
/** Samples of a dough's pieces that are kept, some days of them, and pieces in one. */
export const SAMPLES_MAX = 20
export const SAMPLE_PIECES_MAX = 60
