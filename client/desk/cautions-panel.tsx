import { settingsWords } from '../words/settings.ts'
import type { DeskParts } from './desk-screen.tsx'

export function CautionsPanel({ live, words }: DeskParts) {
  return (
    <>
      <p>{words.cautions.aid}</p>
      <p class="desk-quiet">
        Boilboard, {settingsWords(words).version} {live.version}
      </p>
    </>
  )
}
