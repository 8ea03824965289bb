import type { ComponentChildren } from 'preact'

/** A wide table on a narrow screen: it is moved sideways by itself, by touch and from the keyboard. */
export function Sideways({ name, children }: { readonly name: string; readonly children: ComponentChildren }) {
  return (
    // A group and no region: the panel around it has the same name, and is the landmark.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached from the keyboard (WCAG 2.1.1).
    <div class="desk-sideways" role="group" tabIndex={0} aria-label={name}>
      {children}
    </div>
  )
}
