// The one file that an old Node reads too: nothing here that it could not parse, and no import before the check.
import('./node-version.mjs').then(({ nodeComplaint }) => {
  const complaint = nodeComplaint(process.versions.node)
  if (complaint !== null) {
    console.error(complaint)
    process.exitCode = 1
    return
  }
  return import('./run-server.mjs').then(({ runServer }) => runServer(process.argv.slice(2)))
})
