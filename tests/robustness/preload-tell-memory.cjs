// Says which threads a program starts, with their limits, and how much memory it took at most.
const { readFileSync } = require('node:fs')
const threads = require('node:worker_threads')
const { Worker } = threads
threads.Worker = class extends Worker {
  constructor(script, options) {
    process.stderr.write(`a thread with ${options.resourceLimits.maxOldGenerationSizeMb} MB\n`)
    super(script, options)
  }
}
process.on('exit', () => {
  // What the system says of a process begins anew with its program; `resourceUsage` goes on from who started it.
  const peak = /VmHWM:\s+(\d+) kB/.exec(readFileSync('/proc/self/status', 'utf8'))
  const { user, system } = process.cpuUsage()
  if (threads.isMainThread) process.stderr.write(`at most ${peak[1]} kB, ${(user + system) / 1e6} s of CPU\n`)
})
