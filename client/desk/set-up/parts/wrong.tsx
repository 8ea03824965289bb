import type { Misfit } from '../../../../shared-core/shop/misfit.ts'
import type { SetUpProps } from '../set-up-parts.ts'

/** What does not fit here, each sentence once. */
export function Wrong({ misfits, say }: { readonly misfits: readonly Misfit[]; readonly say: SetUpProps['say'] }) {
  const sentences = [...new Set(misfits.map((misfit) => misfitText(misfit, say)))]
  if (sentences.length === 0) return null
  return (
    <div class="setup-wrong" role="alert">
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  )
}

/** In this screen's language where it has the words, else as the core says it. */
export function misfitText({ entity, field, wrong, right }: Misfit, say: SetUpProps['say']): string {
  return say.misfit(entity, field) ?? `${wrong} ${right}`
}
