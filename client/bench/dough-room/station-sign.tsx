import { Drawing } from '../../parts/drawing.tsx'
import type { StationId } from './room-parts.ts'

/** Each station drawn in a few lines: pan and beam, bowl and hook, bench with pieces, rack with trays, cooler with its door. */
const PATHS: { readonly [station in StationId]: string } = {
  scale: 'M12 84H88 M50 84V30 M20 30H80 M8 44H34A13 13 0 0 1 8 44Z M66 44H92A13 13 0 0 1 66 44Z',
  mixer: 'M18 14H74V34H18Z M46 34V52 M46 52C62 56 60 70 46 66 M20 46C20 92 72 92 72 46 M30 88H62',
  bench:
    'M6 62H94 M18 62V90 M82 62V90 M14 50A9 9 0 1 1 32 50A9 9 0 1 1 14 50 M41 50A9 9 0 1 1 59 50A9 9 0 1 1 41 50 M68 50A9 9 0 1 1 86 50A9 9 0 1 1 68 50',
  proof: 'M20 8V92 M80 8V92 M20 24H80 M20 44H80 M20 64H80 M20 84H80 M30 18A6 6 0 1 1 42 18 M54 18A6 6 0 1 1 66 18',
  cooler: 'M20 8H80V92H20Z M20 36H80 M70 16V28 M70 46V66',
}

export function StationSign({ station, sizePx }: { readonly station: StationId; readonly sizePx: number }) {
  return (
    <Drawing class="dough-sign" viewBox="0 0 100 100" width={`${sizePx}px`} height={`${sizePx}px`}>
      <path d={PATHS[station]} />
    </Drawing>
  )
}
