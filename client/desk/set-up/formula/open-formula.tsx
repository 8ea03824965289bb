import { FileTaker } from '../parts/file-taker.tsx'
import type { SetUpProps } from '../set-up-parts.ts'

/** A formula file into the draft: seen and put right there, then saved like anything else. */
export function OpenFormula(props: SetUpProps) {
  const { file } = props.say.dough
  return (
    <>
      <p class="setup-hint">{file.hint}</p>
      <FileTaker
        {...props}
        address="/api/v1/formulas"
        sentences={{ upload: file.open, same: file.same, read: file.read }}
      />
    </>
  )
}
