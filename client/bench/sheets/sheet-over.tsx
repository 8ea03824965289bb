import type { Act } from '../../../shared-core/day/commands.ts'
import { planNow } from '../../parts/advice.ts'
import type { KitchenLook } from '../../parts/kitchen-calls.ts'
import type { BoardProps } from '../bench-screen.tsx'
import type { SheetRoom } from '../sheet.tsx'
import type { BenchView } from '../view.ts'
import { doneList } from '../view.ts'
import { BatchSheet, OnLineSheet } from './batch-sheets.tsx'
import { BoardSheet } from './board-sheet.tsx'
import { ContentsSheet } from './contents-sheet.tsx'
import { DoneSheet } from './done-sheet.tsx'
import { DoughSheet } from './dough-sheet.tsx'
import { DrySheet } from './dry-sheet.tsx'
import {
  ChangeoverLater,
  DoughRoomLater,
  FloatLater,
  GiveLater,
  HeatLater,
  KettleLater,
  KitchenLater,
  NotesLater,
  OpeningLater,
  PersonLater,
  SettingsLater,
} from './later-sheets.tsx'
import { MoreSheet, UnplannedSheet } from './more-sheet.tsx'
import type { OpenSheet } from './open-sheet.ts'
import { SkipSheet } from './skip-sheet.tsx'

export interface SheetOverProps extends BoardProps {
  /** What is made to order. */
  readonly kitchen: KitchenLook
  readonly view: BenchView
  readonly room: SheetRoom
  readonly sheet: OpenSheet
  readonly open: (sheet: OpenSheet) => void
  readonly onClose: () => void
  readonly send: (act: Act) => void
  readonly onTrySound: () => void
  readonly onWipe: () => void
}

/** The sheet that lies over the line. */
export function SheetOver(props: SheetOverProps) {
  const { sheet, live, store, state, view } = props
  const parts = { ...props, plan: planNow(live, state), nowMs: live.nowMs, calling: callingText(props) }
  switch (sheet.kind) {
    case 'contents':
      return <ContentsSheet {...parts} start={sheet.start} />
    case 'dough':
      return <DoughSheet {...parts} job={sheet.job} />
    case 'board':
      return <BoardSheet {...parts} lines={sheet.lines} />
    case 'batch':
      return <BatchSheet {...parts} batchId={sheet.batchId} />
    case 'more':
      return <MoreSheet {...parts} />
    case 'unplanned':
      return <UnplannedSheet {...parts} />
    case 'skip':
      return <SkipSheet {...parts} />
    case 'on-line':
      return <OnLineSheet {...parts} />
    case 'done':
      return <DoneSheet {...parts} done={doneList({ ...props, deviceId: store.deviceId })} />
    case 'dry-hands':
      return (
        <DrySheet {...parts} dry={view.dry} confirm={(id) => store.confirm(id)} dismiss={(id) => store.dismiss(id)} />
      )
    case 'opening':
      return <OpeningLater {...parts} />
    case 'changeover':
      return <ChangeoverLater key={sheet.part} {...parts} part={sheet.part ?? 'list'} />
    case 'dough-room':
      return <DoughRoomLater {...parts} />
    case 'kitchen':
      return <KitchenLater {...parts} />
    case 'give':
      return <GiveLater {...parts} sheet={sheet} />
    case 'float':
      return <FloatLater {...parts} sheet={sheet} />
    case 'person':
      return <PersonLater {...parts} />
    case 'heat':
      return <HeatLater {...parts} shelfId={sheet.shelfId} />
    case 'notes':
      return <NotesLater {...parts} />
    case 'kettle':
      return <KettleLater {...parts} />
    case 'settings':
      return <SettingsLater {...parts} />
  }
}

/** Sooner than this, somebody had better look up from the sheet. */
const SOON_MS = 60_000

function callingText({ view, live, words }: SheetOverProps): string | null {
  const [next] = view.acts
  return next === undefined || next.atMs - live.nowMs > SOON_MS ? null : words.acts.timed(next, live.nowMs)
}
