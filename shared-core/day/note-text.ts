/** A note is one line that is read in passing, across the room: a text that is longer belongs on paper. */
export const NOTE_CHARACTERS_MAX = 120
