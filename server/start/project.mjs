// @ts-check
import { fileURLToPath } from 'node:url'

/** The project's own folder, whatever folder the command was given in. */
export const ROOT = fileURLToPath(new URL('../../', import.meta.url))

/** A failure whose sentence is all that a person needs: it is printed without a stack. */
export class StartError extends Error {}

/**
 * Runs a step and, when it fails with a {@link StartError}, prints its sentence and ends with 1.
 * @param {() => Promise<void>} step
 */
export async function orComplain(step) {
  try {
    await step()
  } catch (error) {
    console.error(error instanceof StartError ? error.message : error)
    process.exit(1)
  }
}
