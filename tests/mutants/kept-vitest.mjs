// A vitest that stays alive, so that a fault costs the run of its tests and not the start of the runner.
// It runs in a child, started in the copy with the faults: one that never ends can be ended with it.
import { join } from 'node:path'
import { BaseSequencer, createVitest } from 'vitest/node'

const root = process.cwd()
let order = []

/** Test files in the order in which they were asked for, so that a quick one can spare the slow ones. */
class AsAsked extends BaseSequencer {
  sort(files) {
    const at = ({ moduleId }) => order.indexOf(moduleId)
    return Promise.resolve(files.toSorted((a, b) => at(a) - at(b)))
  }
}

const vitest = await createVitest('test', {
  config: join(root, 'tests/vitest.config.ts'),
  watch: false,
  bail: 1,
  fileParallelism: false,
  // One worker loads the sources once for all files.
  isolate: false,
  sequence: { sequencer: AsAsked },
  reporters: [{}],
})
const specifications = new Map((await vitest.globTestSpecifications()).map((each) => [each.moduleId, each]))

process.on('message', async ({ files, changed }) => {
  for (const file of changed) vitest.invalidateFile(join(root, file))
  order = files.map((file) => join(root, file))
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(
    order.map((file) => specifications.get(file)),
    false,
  )
  // What earlier runs left in its state is handed over too.
  const asked = testModules.filter(({ moduleId }) => order.includes(moduleId))
  process.send({
    passed: unhandledErrors.length === 0 && asked.every((each) => each.state() === 'passed'),
    times: asked.map((each) => {
      const { collectDuration, duration, setupDuration } = each.diagnostic()
      return { file: files[order.indexOf(each.moduleId)], ms: collectDuration + duration + setupDuration }
    }),
  })
})
process.send('ready')
// Without the run that asks there is nothing to stay alive for.
process.on('disconnect', () => process.exit())
