import type { ComponentChildren } from 'preact'

export interface DrawingProps {
  readonly class: string
  readonly viewBox: string
  /** CSS lengths. */
  readonly width: string
  readonly height: string
  /** For those who listen instead of looking; without it the drawing is decoration. */
  readonly name?: string | undefined
  readonly children: ComponentChildren
}

/** An SVG that is either named or hidden from those who listen, never a nameless something. */
export function Drawing({ class: kind, viewBox, width, height, name, children }: DrawingProps) {
  const style = { width, height }
  if (name === undefined) {
    return (
      <svg class={kind} viewBox={viewBox} style={style} aria-hidden="true">
        {children}
      </svg>
    )
  }
  return (
    <svg class={kind} viewBox={viewBox} style={style} role="img" aria-label={name}>
      {children}
    </svg>
  )
}
