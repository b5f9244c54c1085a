import type { WiringBox } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import type { SizedSegment } from '../segments/index.js'
import type { Circuit, Job } from '../system/index.js'
import { entering, ofArray, ofTrunk, type Entering } from './entering.js'

/** A stated box with what comes in from the array and what goes on to the panel. */
export interface BoxSite {
  readonly id: string
  readonly run: string
  /** Segment that ends in it; undefined at the beginning of a run. */
  readonly after: string | undefined
  readonly where: string
  readonly box: WiringBox
  readonly incoming: readonly Entering[]
  readonly outgoing: readonly Entering[]
  /** Segments that end or begin in it. */
  readonly segments: readonly SizedSegment[]
  /** What enters it of which the size is not known. */
  readonly unknown: string | undefined
}

/**
 * Boxes of all runs in the order of the way.
 *
 * @throws StageError for a box behind the last segment of its circuits.
 */
export function boxSites(job: Job, sized: readonly SizedSegment[]): BoxSite[] {
  return Object.entries(job.electrical.runs ?? {}).flatMap(([run, { first_box: first }]) => {
    const segments = sized.filter(({ segment }) => segment.run === run)
    const behind = segments.flatMap((one) => {
      const { box } = one.segment.stated
      return box === undefined ? [] : [siteBehind(sized, one, box)]
    })
    const [begin] = segments
    return first === undefined || begin === undefined ? behind : [siteBefore(job, sized, begin, first), ...behind]
  })
}

function siteBehind(sized: readonly SizedSegment[], here: SizedSegment, box: WiringBox): BoxSite {
  const { segment } = here
  const where = `${segment.where}.box`
  const onward = [...new Set(segment.circuits.flatMap((circuit) => nextOf(sized, here, circuit) ?? []))]
  if (onward.length === 0)
    throw new StageError(
      where,
      `${segment.id} ends at equipment, and a box there has no conductors that go on`,
      'State the piece from the box to the equipment as a segment, or delete box',
    )
  // Other ways that end in the same box: their circuits go on in the same segment.
  const beside = sized.filter(
    (other) =>
      other !== here &&
      other.segment.stated.box === undefined &&
      other.segment.circuits.some((circuit) => onward.some((next) => nextOf(sized, other, circuit) === next)),
  )
  const incoming = [here, ...beside]
  return {
    id: `${segment.id}.box`,
    run: segment.run,
    after: segment.id,
    where,
    box,
    incoming: incoming.flatMap(entering),
    outgoing: onward.flatMap(entering),
    segments: [...incoming, ...onward],
    unknown: unknownOf([...incoming, ...onward], box),
  }
}

function siteBefore(job: Job, sized: readonly SizedSegment[], begin: SizedSegment, box: WiringBox): BoxSite {
  const { segment } = begin
  const before = sized
    .slice(0, sized.indexOf(begin))
    .filter((other) => segment.circuits.some((circuit) => nextOf(sized, other, circuit) === begin))
  const starting = segment.circuits.filter(
    (circuit) => !before.some((other) => other.segment.circuits.includes(circuit)),
  )
  const leads = starting.filter(({ trunk }) => trunk === undefined)
  const unnamed = leads.length > 0 && box.other_conductors === undefined
  return {
    id: `${segment.run}.first_box`,
    run: segment.run,
    after: undefined,
    where: `electrical.runs.${segment.run}.first_box`,
    box,
    incoming: [...before.flatMap(entering), ...starting.flatMap(ofTrunk), ...ofArray(job, starting)],
    outgoing: entering(begin),
    segments: [...before, begin],
    unknown: unnamed
      ? `what enters from ${leads.map(({ id }) => id).join(', ')} (state other_conductors)`
      : unknownOf([...before, begin], box),
  }
}

function nextOf(sized: readonly SizedSegment[], here: SizedSegment, circuit: Circuit): SizedSegment | undefined {
  if (!here.segment.circuits.includes(circuit)) return undefined
  return sized.slice(sized.indexOf(here) + 1).find(({ segment }) => segment.circuits.includes(circuit))
}

function unknownOf(segments: readonly SizedSegment[], box: WiringBox): string | undefined {
  const foreign = segments.find(
    ({ segment: { stated } }) => (stated.other_conductors?.total ?? stated.other_conductors?.current_carrying ?? 0) > 0,
  )
  return foreign === undefined || box.other_conductors !== undefined
    ? undefined
    : `the sizes of the foreign conductors in ${foreign.segment.id} (state other_conductors of the box)`
}
