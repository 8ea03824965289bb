import type { ComponentChildren } from 'preact'
import { Key } from '../../parts/key.tsx'
import { Sheet } from '../sheet.tsx'
import type { KitchenParts } from './kitchen-parts.ts'

export interface KitchenSheetProps extends KitchenParts {
  readonly title: string
  readonly detail?: string | undefined
  readonly children: ComponentChildren
}

/** A page over the kitchen: what was done last can be taken back from it. */
export function KitchenSheet(props: KitchenSheetProps) {
  const { words, lastDone, takeBack, open } = props
  const canTakeBack = lastDone !== null && lastDone.refusal === null
  return (
    <Sheet
      {...props}
      backLabel={words.kitchen.back}
      onClose={() => open(null)}
      keys={
        canTakeBack && (
          <div class="bench-mode">
            <Key name={`${words.told.takeBack}: ${lastDone.text}`} onPress={() => takeBack(lastDone)}>
              <span class="bench-small bench-strong">{words.told.takeBack}</span>
            </Key>
          </div>
        )
      }
    />
  )
}
