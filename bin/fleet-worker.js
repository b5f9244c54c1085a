// A worker thread of `run-fleet`: loads the program and lets that subcommand see that it is a worker.
import { workerData } from 'node:worker_threads'
import { loadProgram } from './load-program.js'

const program = loadProgram()
if (program === undefined) throw new Error('the program is not built: run `npm run build` in its folder')
await program.main(['run-fleet', 'worker'], workerData.gablewattFleet.tool)
