#!/usr/bin/env node
import { readFileSync } from 'node:fs'

const { version } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'))
const args = process.argv.slice(2)

if (args.length === 1 && (args[0] === '--version' || args[0] === '-V')) {
  process.stdout.write(`gablewatt ${version}\n`)
} else {
  const program = await import('../dist/program/main.js').catch((error) => {
    if (error.code !== 'ERR_MODULE_NOT_FOUND' || !String(error.url).endsWith('/dist/program/main.js')) throw error
    process.stderr.write('gablewatt: the program is not built: run `npm run build` in its folder\n')
    process.exitCode = 70
  })
  if (program !== undefined) process.exitCode = await program.main(args, `gablewatt ${version}`)
}
