import type { ComponentChildren } from 'preact'

interface PanelProps {
  readonly part: string
  readonly title: string
  /** As wide as its place; else beside another where there is room. */
  readonly isWide?: boolean
  readonly children: ComponentChildren
}

/** One part of a place under its heading. */
export function Panel({ part, title, isWide = false, children }: PanelProps) {
  return (
    <section class={isWide ? 'desk-panel desk-wide' : 'desk-panel'} data-part={part} aria-label={title}>
      <h2>{title}</h2>
      {children}
    </section>
  )
}

interface CellProps {
  readonly value: string | number
  readonly strong?: boolean
  /** What its column is called, where a phone shows each row as a card. */
  readonly label?: string
}

/** Numbers stand right, under each other. */
export function Cell({ value, strong, label }: CellProps) {
  return (
    <td class="desk-number" data-label={label}>
      {strong === true ? <strong>{value}</strong> : value}
    </td>
  )
}
