import type { Step } from '../../worksheet/index.js'
import { REAR_SHARE_SOURCE, storageSection } from '../../tables/nec/index.js'
import { own } from '../../values/index.js'
import { isAc, pairCurrentsOf, ratedIsc, type Circuit, type Job, type StorageCircuitFacts } from '../system/index.js'

type Described = Pick<Step, 'says' | 'formula' | 'inputs' | 'source' | 'limits'>

/** Where the maximum current of a circuit comes from. */
export function describeCurrent(job: Job, circuit: Circuit): Described {
  if (circuit.combiner !== undefined) return ofCombiner(job, circuit, circuit.combiner.strings)
  if (circuit.storage !== undefined) return ofStorage(job, circuit, circuit.storage)
  if (circuit.lines === 'ABC') return ofThreeLines(job, circuit)
  if (isAc(circuit)) return ofInverters(job, circuit)
  return circuit.string?.optimiser === undefined ? ofModules(job, circuit) : ofOptimisers(job, circuit)
}

const ofInverters = (job: Job, circuit: Circuit): Described => ({
  says: `Maximum current of ${circuit.id}: rated continuous output`,
  formula: 'I_max = sum of rated outputs',
  inputs: [{ symbol: 'inverters', value: circuit.inverters, unit: '', from: circuit.where }],
  source: job.nec('inverterOutputCurrent'),
})

const ofStorage = (job: Job, { id }: Circuit, { units, eachA, eachFrom }: StorageCircuitFacts): Described => ({
  says: `Maximum current of ${id}: rated current of its units, the larger one of charging and discharging`,
  formula: 'I_max = N x I',
  inputs: [
    { symbol: 'N', value: units, unit: '', from: 'storage.count' },
    { symbol: 'I', value: eachA, unit: 'A', from: eachFrom },
  ],
  source: storageSection(job.edition, 'ratedCurrent'),
})

function ofThreeLines(job: Job, circuit: Circuit): Described {
  const { ab, bc, ca } = pairCurrentsOf(circuit)
  const input = (symbol: string, value: number) => ({ symbol, value, unit: 'A', from: circuit.where })
  return {
    says: `Maximum current of ${circuit.id}: rated continuous outputs of ${circuit.inverters} inverter(s) in the line that carries most`,
    formula:
      'I_A = sqrt(I_ab2 + I_ca2 + I_ab x I_ca), B and C alike; the highest counts; three phases in one: I_ab = I / sqrt(3)',
    inputs: [input('I_ab', ab), input('I_bc', bc), input('I_ca', ca)],
    source: job.nec('inverterOutputCurrent'),
    limits: 'balanced voltages, all inverters at one power factor',
  }
}

function ofModules(job: Job, { id, string }: Circuit): Described {
  const array = own(job.project.arrays, string?.array)
  const rated = string === undefined ? undefined : ratedIsc(string.module, array)
  const rear = rated?.rearShare ?? 0
  const bifacial = rear > 0 || (rated !== undefined && rated.key !== 'isc_a')
  return {
    says: `Maximum current of ${id}: 125 percent of the short-circuit current${bifacial ? `, the highest that is rated with light on the rear (${rear > 0 ? 'reckoned from the bifaciality' : 'printed'})` : ''}`,
    formula: rear > 0 ? 'I_max = 1.25 x I_sc, I_sc = isc_a x (1 + rear)' : 'I_max = 1.25 x I_sc',
    inputs: [
      {
        symbol: 'I_sc',
        value: string?.iscA ?? 0,
        unit: 'A',
        from: `equipment.modules.${string?.moduleId ?? ''}.${rated?.key ?? 'isc_a'}`,
      },
      ...(rear > 0
        ? [
            {
              symbol: 'rear',
              value: rear,
              unit: '',
              from: `bifaciality_pct, ${array?.mounting ?? ''} (${REAR_SHARE_SOURCE.document})`,
            },
          ]
        : []),
    ],
    source: job.nec('sourceCircuitCurrent'),
  }
}

const ofOptimisers = (job: Job, { id, string }: Circuit): Described => ({
  says: `Maximum current of ${id}: rated continuous output of its converters; the short-circuit current of the modules ends at their inputs`,
  formula: 'I_max = output_max_a',
  inputs: [
    {
      symbol: 'output_max_a',
      value: string?.iscA ?? 0,
      unit: 'A',
      from: `equipment.optimisers.${string?.optimiser?.id ?? ''}.output_max_a`,
    },
  ],
  source: job.nec('dcDcConverterCurrent'),
})

const ofCombiner = (job: Job, { id, where }: Circuit, strings: readonly Circuit[]): Described => ({
  says: `Maximum current of ${id}: sum of its strings`,
  formula: 'I_max = sum of I_max of the strings',
  inputs: strings.map((string) => ({
    symbol: string.id,
    value: string.continuousA,
    unit: 'A',
    from: `${where}: wire.${string.id}.current`,
  })),
  source: job.nec('sourceCircuitCurrent'),
})
