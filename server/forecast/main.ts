import { forecastCommand } from './command.ts'

process.exitCode = await forecastCommand(process.argv.slice(2), {
  data: process.stdout,
  say: (sentence) => process.stderr.write(`${sentence}\n`),
})
