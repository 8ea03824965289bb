import { useEffect, useRef, useState } from 'preact/hooks'
import type { Preview } from '../../../shared-core/live/sales-import.ts'
import type { Done } from '../call.ts'
import type { Draft } from './mapping-view.ts'
import { mappingOf } from './mapping-view.ts'
import { previewBy } from './sales-api.ts'

/** A row of changes asks once. */
const WAIT_MS = 150

export interface Previewing {
  /** As the file is read by what was asked last; null: nothing has come yet. */
  readonly preview: Preview | null
  readonly draft: Draft | null
  /** Of what was asked last; null: it worked, or is under way. */
  readonly trouble: Done<Preview> | null
  readonly change: (draft: Draft) => void
}

/** How a file would be read, asked anew after each change of its mapping. An answer that was overtaken is dropped. */
export function usePreview(id: number): Previewing {
  const [preview, setPreview] = useState<Preview | null>(null)
  const [draft, setDraft] = useState<Draft | null>(null)
  const [trouble, setTrouble] = useState<Done<Preview> | null>(null)
  const asked = useRef(0)
  const timer = useRef(0)
  const ask = async (next: Draft | null) => {
    const mine = ++asked.current
    const done = await previewBy(id, next === null ? null : mappingOf(next))
    if (mine !== asked.current) return
    setTrouble(done.kind === 'done' ? null : done)
    if (done.kind !== 'done') return
    setPreview(done.value)
    if (next === null) setDraft(done.value.mapping)
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: the page is of one file, and begins with what is guessed.
  useEffect(() => {
    void ask(null)
    return () => {
      asked.current++
      window.clearTimeout(timer.current)
    }
  }, [id])
  return {
    preview,
    draft,
    trouble,
    change: (next) => {
      setDraft(next)
      window.clearTimeout(timer.current)
      if (mappingOf(next) !== null) timer.current = window.setTimeout(() => void ask(next), WAIT_MS)
    },
  }
}
