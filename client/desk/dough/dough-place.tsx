import type { PlaceParts } from '../desk-screen.tsx'

/** The dough room: what is wanted in the days to come, and how it becomes mixes. */
export function DoughPlace({ words }: PlaceParts) {
  return <p class="desk-quiet">{words.desk.places.dough}</p>
}
