import type { SetUpProps } from '../set-up-parts.ts'
import { OpenScreens } from './open-screens.tsx'

/** Where screens are opened; what is theirs alone is set on them. */
export function ScreensPart(props: SetUpProps) {
  return (
    <>
      <OpenScreens {...props} />
      <p>
        <a href="#screens">{props.say.guide.sizeHint}</a>
      </p>
    </>
  )
}
