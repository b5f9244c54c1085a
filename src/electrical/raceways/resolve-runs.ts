import { StageError } from '../../worksheet/index.js'
import { own } from '../../values/index.js'
import { COMBINED_OUTPUT, isAc, isStorage, isSupplyTap, type Circuit, serviceOf, type Job } from '../system/index.js'
import { developedLengthsIn } from './developed-length.js'
import type { RacewaySegment, StatedSegment } from './raceway-segment.js'
import { segmentLengthFt } from './segment-length.js'
import { supplyTapSegment } from './supply-tap-segment.js'

/**
 * Raceway segments in the order of the file, with the circuits that each carries; last the conductors of a supply-side
 * connection, which are no part of a run.
 *
 * @throws StageError when a run names an unknown circuit, a length is not above zero, or a circuit has no way to the panel.
 */
export function resolveRuns(job: Job, all: readonly Circuit[]): RacewaySegment[] {
  const circuits = all.filter((circuit) => !isSupplyTap(circuit))
  const runs = Object.entries(job.electrical.runs ?? {}).flatMap(([id, run]) => {
    const carries = run.carries.filter((name) => !isOfNoStorage(job, name))
    return run.carries.length > 0 && carries.length === 0 ? [] : [[id, { ...run, carries }] as const]
  })
  const onRoof = runs.flatMap(([, run]) => Object.values(run.segments).filter(({ location }) => location === 'roof'))
  const segments = runs.flatMap(([runId, run]) => {
    const carried = carriedBy(run.carries, runId, circuits)
    const whereOf = (segmentId: string): string => `electrical.runs.${runId}.segments.${segmentId}`
    const pieces = Object.entries(run.segments).map(([segmentId, stated]): [string, StatedSegment] => [
      segmentId,
      { ...stated, length_ft: segmentLengthFt(job, stated, whereOf(segmentId), onRoof.length === 1) },
    ])
    const developedIn = developedLengthsIn(pieces.map(([, stated]) => stated))
    return pieces.map(([segmentId, stated], i): RacewaySegment => {
      const where = whereOf(segmentId)
      return {
        id: `${runId}.${segmentId}`,
        run: runId,
        where,
        sizeWhere: `${where}.size_awg`,
        lengthWhere: `${where}.length_ft`,
        stated,
        circuits: carried,
        neutral: false,
        developedIn: developedIn[i] ?? 0,
      }
    })
  })
  for (const circuit of circuits)
    if (!segments.some((segment) => segment.circuits.includes(circuit)))
      throw new StageError(
        'electrical.runs',
        `there is no path ${isStorage(circuit) ? 'between the storage and its panel' : 'from the array to the panel'} for circuit '${circuit.id}': no run carries it`,
        `Add a run whose carries names '${circuit.id}', with its segments from box to box`,
      )
  return [
    ...segments.map((segment) => ({ ...segment, neutral: neutralOf(job, segment) })),
    ...all.filter(isSupplyTap).map((tap) => supplyTapSegment(job, tap)),
  ]
}

/** Whether a name is that of a circuit of storage in a project that is planned with no unit of it: its way is left out. */
function isOfNoStorage({ project }: Job, name: string): boolean {
  return project.storage?.count === 0 && /^storage(_dc)?(_\d+)?$/u.test(name)
}

const GROUPS: Readonly<Record<string, (circuit: Circuit) => boolean>> = {
  branches: (circuit) => circuit.kind === 'ac_branch',
  strings: (circuit) => circuit.kind === 'dc_string',
  dc_outputs: (circuit) => circuit.kind === 'dc_output',
  inverter_outputs: (circuit) => circuit.kind === 'ac_inverter_output',
  [COMBINED_OUTPUT]: (circuit) => circuit.kind === 'ac_combined_output',
  storage: (circuit) => circuit.kind === 'ac_storage',
  storage_dc: (circuit) => circuit.kind === 'dc_storage',
}

function carriedBy(names: readonly string[], runId: string, circuits: readonly Circuit[]): Circuit[] {
  const wanted = names.map((name) => {
    const test = own(GROUPS, name) ?? ((circuit: Circuit) => circuit.id === name)
    const matched = circuits.filter(test)
    if (matched.length === 0)
      throw new StageError(
        `electrical.runs.${runId}.carries`,
        `there is no circuit '${name}'; known are ${circuits.map((circuit) => circuit.id).join(', ')}`,
        'Use the id of a circuit, or branches, strings, inverter_outputs, output (output needs a combiner panel)',
      )
    return matched
  })
  return circuits.filter((circuit) => wanted.some((matched) => matched.includes(circuit)))
}

/** Whether the circuits of a run bring a neutral: inverter and combiner outputs do, branches and strings do not. */
function neutralOf(job: Job, segment: RacewaySegment): boolean {
  const stated = own(job.electrical.runs, segment.run)?.neutral
  if (stated !== undefined) return stated
  const brings = segment.circuits.some(
    (circuit) => isAc(circuit) && (circuit.kind.endsWith('output') || isStorage(circuit)),
  )
  return (
    job.worksheet.assume({
      path: `electrical.runs.${segment.run}.neutral`,
      value: brings ? 'yes' : 'no',
      unit: '',
      why: brings
        ? 'Inverter and combiner outputs usually bring a neutral; it only fills the raceway'
        : `Branches of ${serviceOf(job).lineToLineV} V module-level inverters and strings bring no neutral`,
      source: { document: '', standing: 'common practice, no source' },
    }) === 'yes'
  )
}
