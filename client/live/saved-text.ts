/**
 * What a device keeps across reloads, as text by key. The store of a browser is one for all its pages, so every user
 * of this prefixes its keys. Why not IndexedDB: a tap must be saved before it is sent, and only localStorage writes
 * before it returns; a queue of some thousand taps is far below its five megabytes.
 */
export interface SavedText {
  read(key: string): string | null
  /** @returns false when it could not be kept: the store is full, or the browser forbids it */
  write(key: string, text: string): boolean
  remove(key: string): void
  /** Every key that begins with a prefix, in no particular order. */
  keys(prefix: string): string[]
}

/** The browser's store; where there is none, one that forgets and says so by refusing to write. */
export function browserText(): SavedText {
  const storage = storageOrNull()
  if (storage === null) return { read: () => null, write: () => false, remove: () => undefined, keys: () => [] }
  return {
    read: (key) => storage.getItem(key),
    write: (key, text) => {
      try {
        storage.setItem(key, text)
        return true
      } catch {
        return false
      }
    },
    remove: (key) => storage.removeItem(key),
    keys: (prefix) => {
      const keys = Array.from({ length: storage.length }, (_, at) => storage.key(at) ?? '')
      return keys.filter((key) => key.startsWith(prefix))
    },
  }
}

/** What was saved as JSON; null when there is nothing, or nothing that can be read. */
export function readJson(saved: SavedText, key: string): unknown {
  const text = saved.read(key)
  if (text === null) return null
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}

/** Reading the property alone throws where the browser forbids storage. */
function storageOrNull(): Storage | null {
  try {
    return window.localStorage
  } catch {
    return null
  }
}
