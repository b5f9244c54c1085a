import { readFileSync } from 'node:fs'
import { runHouse } from '../../../src/house/index.js'
import { prepareProposal, type PreparedProposal, type ProposalOptions } from '../../../src/papers/index.js'
import { loadProject, type LoadedProject } from '../../../src/project/index.js'
import { countFitted } from '../../../src/roof/index.js'
import { runYield, type YieldRun } from '../../../src/yield/index.js'

const EXAMPLES = new URL('../../../examples/', import.meta.url).pathname

/** Estimates of sample houses: what is changed in these tests does not change the energy. */
const known = new Map<string, YieldRun>()

/** A sample house with more YAML at its end and values changed that leave the energy as it is. */
export function loadSample(name: string, more = '', overrides: readonly string[] = []): LoadedProject {
  const path = `${EXAMPLES}${name}.yaml`
  const text = `${readFileSync(path, 'utf8')}\n${more}`
  const loaded = loadProject({ path, text, overrides })
  return { ...loaded, project: countFitted(loaded.project) }
}

export async function prepare(loaded: LoadedProject, options: ProposalOptions = {}): Promise<PreparedProposal> {
  const house = runHouse(loaded, {
    wishes: { payTheBom: true },
    runYield: (project, files) => {
      const run = known.get(loaded.path) ?? runYield(project, files)
      known.set(loaded.path, run)
      return run
    },
  })
  return await prepareProposal(loaded, house, options)
}
