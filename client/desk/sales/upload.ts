import type { Preview } from '../../../shared-core/live/sales-import.ts'
import type { Done } from '../call.ts'
import { FILES } from './sales-api.ts'

export interface Upload {
  readonly done: Promise<Done<Preview>>
  readonly stop: () => void
}

/**
 * Sends a file as it is, however long: the browser reads it from the disk as it goes. A request of the older kind, as
 * `fetch` does not say how far it is. Never fails: whatever goes wrong on the way is no contact.
 */
export function upload(file: File, onPart: (part: number) => void): Upload {
  const request = new XMLHttpRequest()
  const done = new Promise<Done<Preview>>((resolve) => {
    request.upload.onprogress = ({ loaded, total }) => onPart(total === 0 ? 1 : loaded / total)
    request.onload = () => resolve(doneOf(request))
    request.onerror = () => resolve({ kind: 'no-contact' })
    request.onabort = () => resolve({ kind: 'no-contact' })
  })
  request.open('POST', `${FILES}?name=${encodeURIComponent(file.name)}`)
  request.setRequestHeader('content-type', 'text/csv')
  request.send(file)
  return { done, stop: () => request.abort() }
}

function doneOf({ status, responseText }: XMLHttpRequest): Done<Preview> {
  try {
    const said = JSON.parse(responseText)
    if (status >= 200 && status < 300) return { kind: 'done', value: said }
    return { kind: 'refused', status, detail: typeof said?.detail === 'string' ? said.detail : '' }
  } catch {
    return { kind: 'no-contact' }
  }
}
