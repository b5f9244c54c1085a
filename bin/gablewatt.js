#!/usr/bin/env node
import { readFileSync } from 'node:fs'

const { version } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'))
const args = process.argv.slice(2)

if (args.length === 1 && (args[0] === '--version' || args[0] === '-V')) {
  process.stdout.write(`gablewatt ${version}\n`)
} else {
  const { loadProgram } = await import('./load-program.js')
  const program = loadProgram()
  if (program === undefined) {
    process.stderr.write('gablewatt: the program is not built: run `npm run build` in its folder\n')
    process.exitCode = 70
  } else {
    process.exitCode = await program.main(args, `gablewatt ${version}`)
  }
}
