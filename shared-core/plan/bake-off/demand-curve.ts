import type { BakeOff, DemandGiven } from './bake-off.ts'

/** The part of a day's demand that has come by a minute, inside the hours that count, and the area below that curve. */
export class DemandCurve {
  /** Corners: minute, part, and the area (part · min) up to there. */
  readonly minutes: Float64Array
  readonly parts: Float64Array
  readonly areas: Float64Array

  constructor(given: BakeOff, { profile }: DemandGiven) {
    const from = Math.min(given.close, Math.max(given.open, given.now ?? given.open))
    const inside = profile.filter(([minute]) => minute > from && minute < given.close)
    const corners = [
      [from, partBy(profile, from)] as const,
      ...inside,
      [Math.max(from, given.close), partBefore(profile, Math.max(from, given.close))] as const,
    ]
    this.minutes = Float64Array.from(corners, ([minute]) => minute)
    this.parts = Float64Array.from(corners, ([, part]) => part)
    this.areas = new Float64Array(corners.length)
    for (let i = 1; i < corners.length; i++) {
      const width = (this.minutes[i] as number) - (this.minutes[i - 1] as number)
      const height = ((this.parts[i] as number) + (this.parts[i - 1] as number)) / 2
      this.areas[i] = (this.areas[i - 1] as number) + width * height
    }
  }

  /** Part of the whole day's demand that counts. */
  get whole(): number {
    return (this.parts[this.parts.length - 1] as number) - (this.parts[0] as number)
  }

  /** The corner at or before a minute, the first one for earlier minutes. */
  cornerBy(minute: number): number {
    let corner = 0
    const last = this.minutes.length - 1
    while (corner < last && (this.minutes[corner + 1] as number) <= minute) corner++
    return corner
  }

  partAt(minute: number, corner: number): number {
    const from = this.minutes[corner] as number
    if (minute <= from || corner >= this.minutes.length - 1) return this.parts[corner] as number
    return (this.parts[corner] as number) + (minute - from) * this.slope(corner)
  }

  /** Area below the curve up to a minute. */
  areaAt(minute: number, corner: number): number {
    const beyond = minute - (this.minutes[corner] as number)
    const part = this.parts[corner] as number
    if (beyond <= 0 || corner >= this.minutes.length - 1) return (this.areas[corner] as number) + part * beyond
    return (this.areas[corner] as number) + beyond * (part + (beyond * this.slope(corner)) / 2)
  }

  slope(corner: number): number {
    const width = (this.minutes[corner + 1] as number) - (this.minutes[corner] as number)
    return width > 0 ? ((this.parts[corner + 1] as number) - (this.parts[corner] as number)) / width : 0
  }
}

type Profile = DemandGiven['profile']

/** A step at that very minute included. */
function partBy(profile: Profile, minute: number): number {
  return partWhere(profile, minute, (at) => at <= minute)
}

/** A step at that very minute left out. */
function partBefore(profile: Profile, minute: number): number {
  return partWhere(profile, minute, (at) => at < minute)
}

function partWhere(profile: Profile, minute: number, isPast: (at: number) => boolean): number {
  const next = profile.findIndex(([at]) => !isPast(at))
  const [toMin, toPart] = profile[next === -1 ? profile.length - 1 : next] ?? [0, 0]
  const [fromMin, fromPart] = profile[next - 1] ?? [toMin, toPart]
  if (next <= 0 || toMin <= fromMin) return toPart
  return fromPart + ((toPart - fromPart) * (minute - fromMin)) / (toMin - fromMin)
}
