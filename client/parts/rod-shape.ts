/** A ring on a rod as it is seen from a little above: an ellipse with a hole, lying `y` below the drawing's top. */
export interface SeenRing {
  readonly centreX: number
  readonly centreY: number
  readonly radiusX: number
  readonly radiusY: number
}

/** The hole against the ring: smaller than in a countdown's ring, since the pole has to fill it. */
const HOLE = 0.34

/** A whole ring as the `d` of an SVG path, for fill-rule evenodd; without a hole where another ring lies on it. */
export function wholeRing(ring: SeenRing, withHole: boolean): string {
  return ellipse(ring, 1) + (withHole ? ellipse(ring, HOLE) : '')
}

/**
 * A part of a ring: so many sixths, from the left round the front.
 * @param sixths 1 to 5
 */
export function partRing(ring: SeenRing, sixths: number): string {
  const turn = sixths / 6
  const { radiusX, radiusY } = ring
  const large = sixths > 3 ? 1 : 0
  const outer = `A${n(radiusX)} ${n(radiusY)} 0 ${large} 0 ${at(ring, turn, 1)}`
  const inner = `A${n(radiusX * HOLE)} ${n(radiusY * HOLE)} 0 ${large} 1 ${at(ring, 0, HOLE)}`
  return `M${at(ring, 0, 1)}${outer}L${at(ring, turn, HOLE)}${inner}Z`
}

/**
 * The outline of a ring that is not there yet: of one under another only the front edge, so that a stack of dashes
 * stays a stack and does not become a tangle.
 */
export function ghostRing(ring: SeenRing, sixths: number, under: boolean): string {
  if (!under) return sixths < 6 ? partRing(ring, sixths) : ellipse(ring, 1)
  const turn = Math.min(sixths / 6, 0.5)
  return `M${at(ring, 0, 1)}A${n(ring.radiusX)} ${n(ring.radiusY)} 0 0 0 ${at(ring, turn, 1)}`
}

function ellipse({ centreX, centreY, radiusX, radiusY }: SeenRing, part: number): string {
  const rx = radiusX * part
  const arc = `a${n(rx)} ${n(radiusY * part)} 0 1 0`
  return `M${n(centreX - rx)} ${n(centreY)}${arc} ${n(2 * rx)} 0${arc} ${n(-2 * rx)} 0Z`
}

/** A point on the outline; turn 0 is the left, 0.25 the front. */
function at({ centreX, centreY, radiusX, radiusY }: SeenRing, turn: number, part: number): string {
  const angle = turn * 2 * Math.PI
  return `${n(centreX - radiusX * part * Math.cos(angle))} ${n(centreY + radiusY * part * Math.sin(angle))}`
}

function n(value: number): string {
  return value.toFixed(2)
}
