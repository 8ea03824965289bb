// @ts-check
// `npm run build`: what a start does before it serves.
import { buildIfNeeded } from './build-if-needed.mjs'
import { installIfNeeded } from './install.mjs'
import { orComplain, ROOT } from './project.mjs'

await orComplain(async () => {
  await installIfNeeded(ROOT)
  await buildIfNeeded(ROOT)
})
