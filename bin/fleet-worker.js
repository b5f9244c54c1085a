// A worker thread of `run-fleet`: loads the program and lets that subcommand see that it is a worker.
const { workerData } = require('node:worker_threads')
const { loadProgram } = require('./load-program.js')

const program = loadProgram()
if (program === undefined) throw new Error('the program is not built: run `npm run build` in its folder')
void program.main(['run-fleet', 'worker'], workerData.gablewattFleet.tool)
