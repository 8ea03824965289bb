import type { SetUpProps } from '../set-up-parts.ts'
import { FileTaker } from './file-taker.tsx'

const ADDRESS = '/api/v1/set-up'

/** The set-up as one file. What is read in becomes the draft. */
export function FilePart(props: SetUpProps) {
  const { file } = props.say
  return (
    <>
      <p class="setup-hint">{file.hint}</p>
      <FileTaker
        {...props}
        address={ADDRESS}
        sentences={file}
        isWhole
        before={
          <a class="desk-button" href={ADDRESS} download={file.fileName}>
            {file.download}
          </a>
        }
        after={<a href={`${ADDRESS}.schema.json`}>{file.schema}</a>}
      />
    </>
  )
}
