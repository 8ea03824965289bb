import type { SafeCopies } from '../../../shared-core/live/devices.ts'
import type { DeskDoorWords } from '../../words/desk-door.ts'
import type { DeskParts } from '../desk-screen.tsx'
import { Cell } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'
import { told } from './devices-panel.tsx'

interface CopiesPanelProps extends DeskParts {
  readonly say: DeskDoorWords
  readonly copies: SafeCopies
}

/** How well the journal is kept beside its own file, what could go wrong with that, and how a copy is put back. */
export function CopiesPanel({ copies, say: { copies: say }, live, state, shop, words }: CopiesPanelProps) {
  const { copy, archives, folder, isSameDrive, trouble } = copies
  const confirmedSeq = state.seq - live.pending.filter(({ guess }) => guess === 'taken').length
  const moment = { shopClock: live.shopClock, nowMs: live.nowMs, shop, words }
  const [newest] = archives
  return (
    <>
      <p class={copy === null ? 'desk-trouble' : 'desk-even'}>
        {copy === null
          ? say.none
          : say.copied(Math.max(0, live.nowMs - copy.atMs), Math.max(0, confirmedSeq - copy.seq))}
      </p>
      {trouble !== null && (
        <div class="desk-trouble" role="alert">
          <p>{say.trouble}</p>
          <p>{trouble}</p>
        </div>
      )}
      <p>{say.folder}</p>
      <code class="desk-code-text">{folder}</code>
      {isSameDrive && (
        <div class="door-warning">
          <p>{say.sameDrive}</p>
          <code class="desk-code-text">npm start -- --shop FOLDER --copies OTHER_FOLDER</code>
        </div>
      )}
      <h3>{say.archives}</h3>
      {newest === undefined ? (
        <p class="desk-quiet">{say.noArchives}</p>
      ) : (
        <Sideways name={say.archives}>
          <div class="desk-scroll door-archives">
            <table>
              <thead>
                <tr>
                  <th>{say.columns.when}</th>
                  <th>{say.columns.file}</th>
                  <th class="desk-number">{say.columns.size}</th>
                  <th class="desk-number">{say.columns.acts}</th>
                </tr>
              </thead>
              <tbody>
                {archives.map(({ file, atMs, bytes, seq }) => (
                  <tr key={file}>
                    <td>{told(atMs, moment)}</td>
                    <td>{file}</td>
                    <Cell value={say.bytes(bytes)} />
                    <Cell value={seq} />
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </Sideways>
      )}
      <h3>{say.restoreTitle}</h3>
      <p>{say.restore}</p>
      <code class="desk-code-text">npm run restore -- --shop FOLDER</code>
      {newest !== undefined && (
        <>
          <p>{say.restoreOne}</p>
          <code class="desk-code-text">{`npm run restore -- --shop FOLDER --from "${pathIn(folder, newest.file)}"`}</code>
        </>
      )}
      <p>
        <a class="desk-button" href="/api/v1/export/entries.jsonl" download={true}>
          {say.exportIt}
        </a>
      </p>
    </>
  )
}

/** The path of a copy as the server's machine writes paths. @example pathIn('D:\\copies', 'a.sqlite') // 'D:\\copies\\a.sqlite' */
export function pathIn(folder: string, file: string): string {
  const separator = folder.includes('\\') ? '\\' : '/'
  return folder.endsWith(separator) ? `${folder}${file}` : `${folder}${separator}${file}`
}
