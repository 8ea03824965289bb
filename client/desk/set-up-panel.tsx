import type { LiveState, ShopStore } from '../live/shop-store.ts'
import type { DeskWords } from '../words/desk.ts'
import { LatePart } from './late-part.tsx'
import { SetUpUpload } from './set-up-upload.tsx'

export interface SetUpPanelProps {
  readonly store: ShopStore
  readonly live: LiveState
  readonly words: DeskWords
}

/** Fetched when somebody goes there: the set-up is larger than the rest of the desk. */
const fetchSetUp = () => import('./set-up/set-up-desk.tsx').then((part) => part.SetUpDesk)

/** The shop's set-up. A record in which no shop was ever made has nothing to edit yet: there a file makes the shop. */
export function SetUpPanel(props: SetUpPanelProps) {
  const { store, live, words } = props
  const state = live.shown
  if (state === null || state.shop === null) return <SetUpUpload {...props} />
  return <LatePart fetchPart={fetchSetUp} props={{ store, live, state, shop: state.shop }} {...words.desk.late} />
}
