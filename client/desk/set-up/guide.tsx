import type { ComponentChildren } from 'preact'
import type { GuideStep } from '../../words/set-up.ts'
import { GuideRod } from './guide-rod.tsx'
import { HoursPart } from './parts/hours-part.tsx'
import { BoardSizes, KettleSizes } from './parts/kettle-part.tsx'
import { OpenStep } from './parts/open-step.tsx'
import { OvenSizes } from './parts/oven-part.tsx'
import { PicksPart } from './parts/picks-part.tsx'
import { ShopPart } from './parts/shop-part.tsx'
import { TapPresets } from './parts/stations-part.tsx'
import { Wrong } from './parts/wrong.tsx'
import { GUIDE_STEPS, go, hashOf } from './route.ts'
import type { SetUpProps } from './set-up-parts.ts'

export interface GuideProps extends SetUpProps {
  readonly step: GuideStep
}

/** Step by step from nothing to open screens. Everything has a value already: going on is always an answer. */
export function Guide(props: GuideProps) {
  const { step, say } = props
  const { guide } = say
  const at = GUIDE_STEPS.indexOf(step)
  return (
    <div class="setup-guide">
      <GuideRod step={step} say={say} />
      <section class="setup-sheet" tabIndex={-1} aria-label={guide.questions[step]}>
        <p class="setup-hint">{guide.place(at + 1, GUIDE_STEPS.length)}</p>
        <h2>{guide.questions[step]}</h2>
        <StepBody {...props} />
      </section>
    </div>
  )
}

function StepBody(props: GuideProps) {
  switch (props.step) {
    case 'shop':
      return <Step {...props} body={<ShopPart {...props} />} />
    case 'oven':
      return (
        <Step
          {...props}
          body={
            <>
              <OvenSizes {...props} />
              <p class="setup-caution">{props.say.cautions.oven}</p>
            </>
          }
        />
      )
    case 'kettle':
      return (
        <Step
          {...props}
          body={
            <>
              <KettleSizes {...props} />
              <BoardSizes {...props} />
              <p class="setup-caution">{props.say.cautions.kettle}</p>
            </>
          }
        />
      )
    case 'hours':
      return <Step {...props} body={<HoursPart {...props} />} />
    case 'doughs':
      return <Step {...props} body={<PicksPart {...props} />} />
    case 'stations':
      return <LastStep {...props} />
    case 'open':
      return <OpenStep {...props} />
  }
}

interface StepProps extends GuideProps {
  readonly body: ComponentChildren
}

function Step(props: StepProps) {
  const { step, say, body, misfits, changes } = props
  const next = GUIDE_STEPS[GUIDE_STEPS.indexOf(step) + 1] ?? 'open'
  const shown = step === 'hours' ? [] : misfits
  return (
    <>
      {body}
      <Wrong misfits={shown} say={say} />
      <div class="setup-foot">
        <BackKey {...props} />
        <button type="button" class="desk-strong" onClick={() => go({ kind: 'guide', step: next })}>
          {changes.length === 0 ? say.guide.leave : say.guide.next}
        </button>
      </div>
    </>
  )
}

function BackKey({ step, say }: GuideProps) {
  const before = GUIDE_STEPS[GUIDE_STEPS.indexOf(step) - 1]
  if (before === undefined) return <a href={hashOf({ kind: 'overview' })}>{say.guide.leaveGuide}</a>
  return (
    <button type="button" onClick={() => go({ kind: 'guide', step: before })}>
      {say.guide.back}
    </button>
  )
}

/** The last question; its key saves all and goes on to the screens. */
function LastStep(props: GuideProps) {
  const { say, misfits, words, saving } = props
  return (
    <>
      <TapPresets {...props} />
      <p class="setup-caution">{words.cautions.aid}</p>
      <Wrong misfits={misfits} say={say} />
      {saving.status === 'waiting' && <p role="status">{say.save.waiting}</p>}
      <div class="setup-foot">
        <BackKey {...props} />
        <button
          type="button"
          class="desk-strong"
          disabled={misfits.length > 0 || saving.status === 'waiting'}
          onClick={() => {
            if (props.changes.length > 0) saving.save(null)
            go({ kind: 'guide', step: 'open' })
          }}
        >
          {say.guide.saveAndOpen}
        </button>
      </div>
    </>
  )
}
