#!/usr/bin/env node
// Plain CommonJS, as the folder's package.json says: Node starts it a tenth faster than a module.
const { version } = require('../package.json')

const args = process.argv.slice(2)
if (args.length === 1 && (args[0] === '--version' || args[0] === '-V')) {
  process.stdout.write(`gablewatt ${version}\n`)
} else if (args.includes('--untrusted')) {
  void require('./run-untrusted.js')
    .runUntrusted(args)
    .then((exitCode) => (process.exitCode = exitCode))
} else {
  const program = require('./load-program.js').loadProgram()
  if (program === undefined) {
    process.stderr.write('gablewatt: the program is not built: run `npm run build` in its folder\n')
    process.exitCode = 70
  } else {
    void program.main(args, `gablewatt ${version}`).then((exitCode) => (process.exitCode = exitCode))
  }
}
