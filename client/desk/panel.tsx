import type { ComponentChildren } from 'preact'

/** One part of the desk under its heading. */
export function Panel({ part, title, children }: { part: string; title: string; children: ComponentChildren }) {
  return (
    <section class="desk-panel" id={part} aria-label={title}>
      <h2>{title}</h2>
      {children}
    </section>
  )
}

/** Numbers stand right, under each other. */
export function Cell({ value, strong }: { value: string | number; strong?: boolean }) {
  return <td class="desk-number">{strong === true ? <strong>{value}</strong> : value}</td>
}
