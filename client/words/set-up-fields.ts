import type { SetUpChange } from '../../shared-core/shop/set-up-change.ts'

/** What each field of a set-up is called, on its form and in the list of what will change. */
export type SetUpFields = { readonly [E in SetUpChange['entity']]: { readonly [F in FieldOf<E>]: string } }

type ValueOf<E extends SetUpChange['entity']> = NonNullable<Extract<SetUpChange, { entity: E }>['value']>
/** Without what no form shows; a set of windows has the stages themselves as its fields. */
type FieldOf<E extends SetUpChange['entity']> = E extends 'windows'
  ? 'windows'
  : Exclude<keyof ValueOf<E>, 'id' | 'order' | 'retired'>
