import type { Response } from 'express'
import { WorkStopped } from '../work/work-desk.ts'
import { sendProblem } from './problem.ts'

/** Runs what asks the thread for advice; says that it is not yet where that thread is begun anew. */
export async function whileWorking(response: Response, run: () => Promise<void>): Promise<void> {
  try {
    await run()
  } catch (error) {
    if (!(error instanceof WorkStopped)) throw error
    response.set('retry-after', '2')
    const detail = 'The part of the server that looks at past sales is being started. Ask again in a moment.'
    sendProblem(response, { status: 503, title: 'Not yet', detail })
  }
}
