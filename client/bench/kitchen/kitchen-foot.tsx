import type { KeyTone } from '../../parts/key.tsx'
import { Key } from '../../parts/key.tsx'
import type { Sounding } from '../sounding.ts'
import type { KitchenParts } from './kitchen-parts.ts'

export interface KitchenFootProps extends KitchenParts {
  readonly told: string
  readonly isTrouble: boolean
  readonly sounding: Sounding | null
  readonly onComing: (key: string) => void
  /** The next ring that is touched is looked at. */
  readonly isLooking: boolean
  readonly onLook: () => void
  /** Lets go of what was chosen for the oven; null: nothing was. */
  readonly letGo: (() => void) | null
  /** Rods that do not stand on the glass; 0: none. */
  readonly otherRods: number
  readonly onOtherRods: () => void
}

/** Taking back what was done here last, orders that are ready, portions, and the key that looks at a ring. */
export function KitchenFoot(props: KitchenFootProps) {
  const { words, lastDone, takeBack, told, isTrouble, queue, open, sounding, isLooking, letGo, otherRods } = props
  const { kitchen } = words
  const { done, top } = words.bench
  const canTakeBack = lastDone !== null && lastDone.refusal === null
  const { length: ready } = queue.ready
  return (
    <footer class="kitchen-foot">
      <FootKey
        id="take-back"
        label={words.told.takeBack}
        tone={canTakeBack ? 'strong' : 'plain'}
        refusal={canTakeBack ? undefined : lastDone === null ? done.nothingYet : done.notThis}
        name={lastDone === null ? undefined : `${words.told.takeBack}: ${lastDone.text}`}
        onPress={() => lastDone !== null && takeBack(lastDone)}
      />
      <div class={isTrouble ? 'bench-told bench-trouble' : 'bench-told'} role="status">
        {told}
      </div>
      {sounding !== null && <FootKey id="coming" label={top.coming} onPress={() => props.onComing(sounding.key)} />}
      {letGo !== null && <FootKey id="let-go" label={kitchen.letGo} onPress={letGo} />}
      {otherRods > 0 && (
        <FootKey id="other-rods" label="▼" detail={kitchen.otherKinds(otherRods)} onPress={props.onOtherRods} />
      )}
      <FootKey id="look" label={kitchen.look} chosen={isLooking} onPress={props.onLook} />
      <FootKey
        id="ready"
        label={kitchen.ready}
        detail={String(ready)}
        tone={ready > 0 ? 'strong' : 'plain'}
        onPress={() => open({ kind: 'ready' })}
      />
      <FootKey id="portions" label={kitchen.portions} onPress={() => open({ kind: 'portions' })} />
    </footer>
  )
}

interface FootKeyProps {
  readonly id: string
  readonly label: string
  readonly detail?: string
  readonly tone?: KeyTone
  readonly chosen?: boolean
  readonly refusal?: string | undefined
  readonly name?: string | undefined
  readonly onPress: () => void
}

function FootKey({ id, label, detail, ...key }: FootKeyProps) {
  return (
    <div class="bench-bottom-key" data-cell={id}>
      <Key {...key}>
        <span class="bench-label">{label}</span>
        {detail !== undefined && <span class="bench-small">{detail}</span>}
      </Key>
    </div>
  )
}
