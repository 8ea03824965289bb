import { useMemo } from 'preact/hooks'
import { encode } from 'uqr'
import { qrPath } from './qr-path.ts'

interface QrCodeProps {
  readonly text: string
  readonly name: string
  readonly sizePx: number
}

/** Light modules around the code that a reader needs. Source: ISO/IEC 18004, "quiet zone" of 4 modules. */
const QUIET_MODULES = 4

/** A QR code, black on white whatever the theme: cameras read it so. */
export function QrCode({ text, name, sizePx }: QrCodeProps) {
  const { data, size } = useMemo(() => encode(text, { ecc: 'M', border: QUIET_MODULES }), [text])
  return (
    <svg
      class="desk-qr"
      role="img"
      aria-label={name}
      width={sizePx}
      height={sizePx}
      viewBox={`0 0 ${size} ${size}`}
      shape-rendering="crispEdges"
    >
      <rect width={size} height={size} fill="#ffffff" />
      <path d={qrPath(data)} fill="#000000" />
    </svg>
  )
}
