import { defineConfig } from 'vitest/config'
import { BaseSequencer } from 'vitest/node'
import config from '../vitest.config.ts'

const order = JSON.parse(process.env.TEST_FILES_IN_ORDER ?? '[]')

/** Test files in the order in which they were asked for, so that a quick one can spare the slow ones. */
class AsAsked extends BaseSequencer {
  sort(files) {
    const at = ({ moduleId }) => order.findIndex((file) => moduleId.endsWith(`/${file}`))
    return Promise.resolve(files.toSorted((a, b) => at(a) - at(b)))
  }
}

export default defineConfig({
  test: {
    ...config.test,
    fileParallelism: false,
    // One worker loads the sources once for all files, and what was compiled for the last fault serves for the next.
    isolate: false,
    experimental: { fsModuleCache: true, fsModuleCachePath: new URL('../../.mutants-cache', import.meta.url).pathname },
    sequence: { sequencer: AsAsked },
  },
})
