import { text } from 'node:stream/consumers'
import { planCommand } from './command.ts'

process.exitCode = await planCommand(process.argv.slice(2), {
  data: (json) => void process.stdout.write(json),
  say: (sentence) => void process.stderr.write(`${sentence}\n`),
  input: () => text(process.stdin),
})
