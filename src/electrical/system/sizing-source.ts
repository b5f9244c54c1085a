import { storageSection } from '../../tables/nec/index.js'
import type { Source } from '../../worksheet/index.js'
import { isAc, isStorage, type Circuit } from './circuit.js'
import type { Job } from './job.js'

/** Section that rules the conductors of a circuit by its current. */
export const sizingSource = (job: Job, circuit: Pick<Circuit, 'kind'>): Source =>
  isStorage(circuit)
    ? storageSection(job.edition, 'conductor')
    : job.nec(isAc(circuit) ? 'acOutputSizing' : 'dcConductorAmpacity')
