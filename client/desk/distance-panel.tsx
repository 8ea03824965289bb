import { useState } from 'preact/hooks'
import type { DeskParts } from './desk-screen.tsx'
import type { DistanceForm } from './distance-view.ts'
import { distanceAnswer, usualDistances } from './distance-view.ts'

/** Which distances a wall screen supports, before somebody buys or hangs one. */
export function DistancePanel({ words }: DeskParts) {
  const { distance } = words.desk
  const [form, setForm] = useState<DistanceForm>({ diagonalInch: 43, widthPx: 1920, heightPx: 1080, metres: 3 })
  const answer = distanceAnswer(form)
  const field = (name: keyof DistanceForm, label: string, step: string) => (
    <label class="desk-field">
      <span>{label}</span>
      <input
        type="number"
        min="0"
        step={step}
        value={Number.isNaN(form[name]) ? '' : form[name]}
        onInput={(event) => setForm({ ...form, [name]: event.currentTarget.valueAsNumber })}
      />
    </label>
  )
  return (
    <>
      <p class="desk-quiet">{distance.hint}</p>
      <div class="desk-columns">
        <div class="desk-grow">
          <div class="desk-form">
            {field('diagonalInch', distance.diagonal, 'any')}
            {field('widthPx', distance.widthPx, '1')}
            {field('heightPx', distance.heightPx, '1')}
            {field('metres', distance.metres, '0.1')}
          </div>
          <p role="status" class={answer?.supported === true ? 'desk-even' : 'desk-trouble'}>
            {answer === null
              ? distance.impossible
              : answer.supported
                ? distance.supported(answer.farthestM)
                : distance.notSupported(answer.farthestM)}
          </p>
        </div>
        <table class="desk-narrow">
          <thead>
            <tr>
              <th>{distance.tableDiagonal}</th>
              <th class="desk-number">{distance.tableFarthest}</th>
            </tr>
          </thead>
          <tbody>
            {usualDistances().map(({ diagonalInch, farthestM }) => (
              <tr key={diagonalInch}>
                <td>{diagonalInch}″</td>
                <td class="desk-number">{farthestM} m</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  )
}
