/** What is wrong with the copies' folder, as the end of a sentence: each cause has its own remedy. */
export class CopyError extends Error {
  override name = 'CopyError'
}

/** @param error whatever came while a copy was written */
export function copyTrouble(error: unknown, folder: string): string {
  const text = error instanceof Error ? error.message : String(error)
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  if (error instanceof CopyError) return text
  if (code === 'ENOENT' || /unable to open database file/.test(text))
    return `${folder} cannot be opened. Is its drive plugged in, and may this user write to it?`
  if (code === 'ENOSPC' || /disk is full/.test(text)) return `the disk of ${folder} is full. Make room on it.`
  if (code === 'EROFS' || code === 'EACCES' || code === 'EPERM' || /readonly/.test(text))
    return `this user may not write to ${folder}. Give it the right, and look whether the drive has become read-only.`
  if (code === 'EIO' || /disk I\/O error/.test(text))
    return `the disk of ${folder} does not write as it should. Look at the drive and its cable.`
  return `${text.replace(/\.$/, '')} (${folder}).`
}
