import type { DeskParts } from './desk-screen.tsx'

/** What the board took for granted: one touch says that it is right. */
export function DryPanel({ store, state, words }: DeskParts) {
  const { dry } = words.desk
  const unsure = [...state.unsure.values()].sort((one, other) => one.atMs - other.atMs || (one.id < other.id ? -1 : 1))
  if (unsure.length === 0) return <p class="desk-quiet">{dry.nothing}</p>
  const confirm = (ids: readonly (typeof unsure)[number]['id'][]) => {
    store.send({ type: 'confirmPresumed', unsureIds: ids })
  }
  return (
    <>
      <div class="desk-line">
        <button type="button" class="desk-strong" onClick={() => confirm(unsure.map((one) => one.id))}>
          {dry.allRight}
        </button>
      </div>
      <div class="desk-scroll desk-lines">
        <table>
          <tbody>
            {unsure.map((one) => {
              const { title, text } = words.live.unsure(one)
              return (
                <tr key={one.id}>
                  <td>
                    <strong>{title}</strong>
                  </td>
                  <td class="desk-quiet">{text}</td>
                  <td>
                    <button type="button" onClick={() => confirm([one.id])}>
                      {dry.right}
                    </button>
                  </td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </div>
    </>
  )
}
