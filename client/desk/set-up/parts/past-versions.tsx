import { useRef, useState } from 'preact/hooks'
import type { Shop } from '../../../../shared-core/shop/shop.ts'
import { momentOf } from '../../moment.ts'
import { OutcomeText } from '../../outcome.tsx'
import { useGot } from '../../use-got.ts'
import { usePosting } from '../../use-posting.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import type { Version } from '../versions.ts'
import { versionLines } from '../versions.ts'

/** How the set-up was, the newest first; the first of them is how it is. */
export function PastVersions(props: SetUpProps) {
  const { store, live, running, words, say } = props
  const got = useGot<readonly Version[]>('/api/v1/set-up/versions', useCount(running))
  const [askedSeq, setAskedSeq] = useState<number | null>(null)
  const posting = usePosting(store, live)
  const restore = (seq: number) => {
    setAskedSeq(null)
    void posting.send({ address: `/api/v1/set-up/versions/${seq}/restore`, body: '{}', type: 'application/json' })
  }
  const list = got.kind === 'got' ? got.value : []
  return (
    <>
      <h3>{say.versions.pastTitle}</h3>
      <p class="setup-hint">{say.versions.pastHint}</p>
      {got.kind === 'no-contact' && <p class="setup-hint">{say.versions.noContact}</p>}
      {got.kind === 'got' && list.length === 0 && <p class="setup-hint">{say.versions.none}</p>}
      {posting.outcome !== null && (
        <OutcomeText
          outcome={posting.outcome}
          words={words}
          taken={say.versions.wentBack}
          place={(path) => path}
          onConfirm={(codes) => void posting.confirm(codes)}
          onPutAway={posting.putAway}
        />
      )}
      {list.map((version, at) => {
        const { day, clock } = momentOf(version.atMs, { ...live, shop: running, words })
        return (
          <VersionRow
            key={version.seq}
            version={version}
            when={[day === '' ? words.desk.trays.today : day, clock].join(', ')}
            isCurrent={at === 0}
            isAsked={askedSeq === version.seq}
            say={say}
            onAsk={setAskedSeq}
            onRestore={restore}
          />
        )
      })}
    </>
  )
}

interface VersionRowProps {
  readonly version: Version
  readonly when: string
  readonly isCurrent: boolean
  readonly isAsked: boolean
  readonly say: SetUpProps['say']
  readonly onAsk: (seq: number | null) => void
  readonly onRestore: (seq: number) => void
}

function VersionRow({ version, when, isCurrent, isAsked, say, onAsk, onRestore }: VersionRowProps) {
  const { seq, device } = version
  return (
    <section class="setup-version" data-version={seq}>
      <h4>
        {when} <span class="setup-hint">{device}</span>
      </h4>
      <ul class="setup-told-list">
        {versionLines(version, say).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {isCurrent ? (
        <span class="setup-hint">{say.versions.current}</span>
      ) : isAsked ? (
        <div class="setup-acts" role="alert">
          <span>{say.versions.sure(when)}</span>
          <button type="button" class="desk-strong" onClick={() => onRestore(seq)}>
            {say.versions.yes}
          </button>
          <button type="button" onClick={() => onAsk(null)}>
            {say.versions.no}
          </button>
        </div>
      ) : (
        <button type="button" onClick={() => onAsk(seq)}>
          {say.versions.goBack}
        </button>
      )}
    </section>
  )
}

/** Counts how often the running set-up has become another one. */
export function useCount(running: Shop): number {
  const last = useRef({ running, count: 0 })
  if (last.current.running !== running) last.current = { running, count: last.current.count + 1 }
  return last.current.count
}
