import type { SetUpProps } from '../set-up-parts.ts'
import { PastVersions } from './past-versions.tsx'
import { PlannedChanges } from './planned-changes.tsx'

/** Changes to come, and how it was before. */
export function VersionsPart(props: SetUpProps) {
  return (
    <>
      <PlannedChanges {...props} />
      <PastVersions {...props} />
    </>
  )
}
