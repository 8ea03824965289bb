import { Choice } from '../parts/choice.tsx'
import { supportsDistance } from '../parts/legibility.ts'
import { Stepper } from '../parts/stepper.tsx'
import type { SheetPartProps } from './settings-sheet.tsx'
import { Field } from './settings-sheet.tsx'

const METRES = [1.5, 2, 2.5, 3, 3.5, 4, 5, 6]
const INCHES = { min: 10, max: 100 }

/** How large the screen is and from how far it is read: all text follows from these two. */
export function SizeSettings({ store, live, panel, settingsWords: say }: SheetPartProps) {
  const { diagonalInches, viewingMetres } = live.settings
  const { supported, farthestM } = supportsDistance({ ...panel, distanceM: viewingMetres })
  return (
    <>
      <Field title={say.diagonal}>
        <Stepper
          name={say.diagonal}
          value={Math.round(diagonalInches)}
          {...INCHES}
          steps={[1, 10]}
          detail={say.inches(Math.round(diagonalInches))}
          lessName={(step) => `${step} ${say.less}`}
          moreName={(step) => `${step} ${say.more}`}
          limitWords={{ least: say.least, most: say.most }}
          onChange={(value) => store.changeSettings({ diagonalInches: value })}
        />
      </Field>
      <Field title={say.distance} hint={supported ? say.readableTo(farthestM) : say.tooFar(viewingMetres)}>
        <Choice
          name={say.distance}
          options={METRES.map((metres) => ({ value: String(metres), label: say.metres(metres) }))}
          chosen={String(viewingMetres)}
          onChoose={(value) => store.changeSettings({ viewingMetres: Number(value) })}
        />
      </Field>
    </>
  )
}
