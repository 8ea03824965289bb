import type { FigureText } from './figures-view.ts'

/** The five figures side by side. */
export function FiguresList({ figures }: { readonly figures: readonly FigureText[] }) {
  return (
    <dl class="desk-figures">
      {figures.map(({ name, value, details }) => (
        <div key={name} class="desk-figure">
          <dt>{name}</dt>
          <dd class="desk-figure-value">{value}</dd>
          {details.map((detail) => (
            <dd key={detail} class="desk-quiet desk-small">
              {detail}
            </dd>
          ))}
        </div>
      ))}
    </dl>
  )
}
