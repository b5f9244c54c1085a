import { CONTINUOUS_FACTOR, DWELLING_SERVICE_SHARE } from '../../tables/nec/index.js'
import { equipmentGroundSize } from '../conductors/index.js'
import type { CircuitInSegment, SizedSegment } from '../segments/index.js'
import {
  COMBINED_OUTPUT,
  deviceProtects,
  isSupplyTap,
  polesOf,
  serviceOf,
  type Circuit,
  type ConductorValues,
  type GroundingValues,
  type Job,
} from '../system/index.js'
import { own } from '../../values/index.js'
import { STORAGE_SOURCE } from '../storage/index.js'
import { flowThroughFeeder, panelById } from './flows.js'
import { supplyA } from './judge-feeder.js'
import { judgeTap } from './judge-tap.js'
import type { ServiceBonding } from './service-bonding.js'
import { PV_SOURCE, SERVICE, type FeederNode, type TapNode, type Tree } from './tree.js'

/** What the list is made of. */
export interface ListInputs {
  readonly job: Job
  readonly tree: Tree
  readonly circuits: readonly Circuit[]
  readonly sized: readonly SizedSegment[]
  readonly grounding: GroundingValues
  readonly bonding: ServiceBonding | undefined
}

/**
 * Every conductor from the array to the utility once, with the tag that marks it on diagram and schedules: trunk cables and
 * raceways by number in the order of the way, then feeders F, taps T, service S, grounding and bonding G.
 */
export function conductorList(inputs: ListInputs): ConductorValues[] {
  return [
    ...trunkRows(inputs),
    ...racewayRows(inputs),
    ...inputs.tree.feeders.map((feeder, i) => feederRow(inputs, feeder, `F${i + 1}`)),
    ...inputs.tree.taps.map((tap, i) => tapRow(inputs, tap, `T${i + 1}`)),
    ...serviceRows(inputs),
    ...groundRows(inputs),
  ]
}

/** Trunk cables that are alike share a number. */
export function trunkGroups(circuits: readonly Circuit[]): Circuit[][] {
  const groups = new Map<string, Circuit[]>()
  for (const circuit of circuits)
    if (circuit.trunk !== undefined) groups.set(circuit.trunk.id, [...(groups.get(circuit.trunk.id) ?? []), circuit])
  return [...groups.values()]
}

function trunkRows({ circuits }: ListInputs): ConductorValues[] {
  return trunkGroups(circuits).flatMap((group, i) =>
    group.flatMap((circuit, k): ConductorValues[] => {
      const { trunk } = circuit
      if (trunk === undefined) return []
      return [
        {
          tag: tagOf(i + 1, k, group.length),
          from: `last inverter of ${circuit.id}`,
          to: `${circuit.id} junction box`,
          circuits: [circuit.id],
          size_awg: trunk.cable.size_awg,
          material: 'copper',
          insulation: null,
          count: {
            lines: trunk.cable.lines ?? polesOf(circuit),
            neutral: 0,
            ground: trunk.cable.has_egc === true ? 1 : 0,
          },
          sets: 1,
          ampacity_a: trunk.cable.ampacity_a,
          required_a: circuit.continuousA,
          ocpd_a: circuit.deviceA,
          ocpd_size_ok: circuit.deviceA === null || circuit.deviceA <= (circuit.maxDeviceA ?? Infinity),
          method: 'listed trunk cable',
          section: '110.3(B)',
          grounding_awg: trunk.cable.has_egc === true ? trunk.cable.size_awg : null,
          length_ft: trunk.lengthFt,
        },
      ]
    }),
  )
}

/** Lines of feeders and of the service. */
const linesOf = (job: Job): number => (serviceOf(job).phases === 3 ? 3 : 2)

/** Conductors of a circuit in a raceway; a ground that serves all circuits counts for each. */
function countIn({ contents, ground }: SizedSegment, circuit: string): ConductorValues['count'] {
  const counted = (use: 'current_carrying' | 'neutral'): number =>
    contents.conductors.reduce((sum, row) => sum + (row.circuit === circuit && row.use === use ? row.count : 0), 0)
  return { lines: counted('current_carrying'), neutral: counted('neutral'), ground: ground === null ? 0 : 1 }
}

const tagOf = (number: number, index: number, of: number): string =>
  of === 1 ? String(number) : `${number}${letter(index)}`

const letter = (index: number): string =>
  index < 26 ? String.fromCodePoint(97 + index) : `${letter(Math.floor(index / 26) - 1)}${letter(index % 26)}`

function racewayRows(inputs: ListInputs): ConductorValues[] {
  const first = trunkGroups(inputs.circuits).length
  return inputs.sized.flatMap((segment, i) =>
    segment.circuits.map((entry, k) =>
      racewayRow(inputs, segment, entry, tagOf(first + i + 1, k, segment.circuits.length)),
    ),
  )
}

function racewayRow(inputs: ListInputs, segment: SizedSegment, entry: CircuitInSegment, tag: string): ConductorValues {
  const { circuit, demand, sized } = entry
  const { verdict } = sized
  const ampacityA = Math.min(verdict.terminalA, verdict.correctedA)
  const small = verdict.smallDeviceA
  const { from, to } = endsOf(inputs, segment, circuit)
  return {
    tag,
    from,
    to,
    circuits: [circuit.id],
    size_awg: sized.size,
    material: demand.material,
    insulation: segment.conditions.insulation,
    count: countIn(segment, circuit.id),
    sets: 1,
    ampacity_a: ampacityA,
    required_a: CONTINUOUS_FACTOR * circuit.continuousA,
    ocpd_a: circuit.deviceA ?? circuit.floor?.endDeviceA ?? null,
    ocpd_size_ok:
      demand.deviceA === null
        ? circuit.floor === undefined || circuit.floor.endDeviceA <= ampacityA
        : deviceProtects(demand.deviceA, ampacityA) && (small === undefined || demand.deviceA <= small),
    method: segment.segment.stated.raceway === 'none' ? 'free air' : segment.segment.stated.raceway,
    section: '310',
    grounding_awg: segment.ground,
    length_ft: segment.segment.stated.length_ft,
  }
}

/** Terminals or boxes at the ends of a piece: those of its circuit at the ends of its way, else the boxes between. */
function endsOf(
  { sized, tree, job, circuits }: ListInputs,
  segment: SizedSegment,
  circuit: Circuit,
): { readonly from: string; readonly to: string } {
  const way = sized.filter(({ circuits }) => circuits.some((entry) => entry.circuit === circuit))
  const at = way.indexOf(segment)
  const box = (index: number): string => `box ${way[index]?.segment.id ?? ''}`
  return {
    from: at === 0 ? startOf(circuit) : box(at - 1),
    to: at === way.length - 1 ? endOf(job, tree, circuits, circuit) : box(at),
  }
}

function startOf(circuit: Circuit): string {
  if (isSupplyTap(circuit)) return 'PV overcurrent device'
  if (circuit.storage !== undefined) return circuit.storage.landing === undefined ? 'battery' : STORAGE_SOURCE
  if (circuit.id === COMBINED_OUTPUT) return 'combiner'
  if (circuit.kind === 'ac_branch') return `${circuit.id} junction box`
  return circuit.kind === 'dc_string' ? `string ${circuit.id}` : circuit.id
}

function endOf(job: Job, tree: Tree, circuits: readonly Circuit[], circuit: Circuit): string {
  if (circuit.storage !== undefined) return circuit.storage.landing ?? 'inverter of the battery'
  if (circuit.kind === 'dc_string')
    return (
      circuits.find(({ combiner }) => combiner?.strings.some(({ id }) => id === circuit.id))?.id ??
      circuit.string?.unit ??
      'inverter'
    )
  if (circuit.kind === 'dc_output') return circuit.combiner?.strings[0]?.string?.unit ?? 'inverter'
  if (isSupplyTap(circuit)) return SERVICE
  if (circuit.id !== COMBINED_OUTPUT && job.electrical.combiner !== undefined) return 'combiner'
  const at = tree.sources.find(({ id }) => id === PV_SOURCE)?.at
  return at === undefined || at === 'supply_side' ? 'PV overcurrent device' : 'panel' in at ? at.panel : at.tap
}

function feederRow({ job, tree }: ListInputs, feeder: FeederNode, tag: string): ConductorValues {
  const stated = own(job.electrical.distribution?.feeders, feeder.id)
  const ground =
    feeder.groundAwg ??
    (supplyA(tree, feeder) === undefined
      ? null
      : equipmentGroundSize(supplyA(tree, feeder) ?? 0, `${feeder.where}.breaker_a`))
  const deviceA = supplyA(tree, feeder) ?? null
  const flow = flowThroughFeeder(tree, feeder)
  const { conductor } = feeder
  return {
    tag,
    from: feeder.from,
    to: feeder.to,
    circuits: [feeder.id],
    size_awg: conductor.size,
    material: conductor.material,
    insulation: stated?.insulation ?? null,
    count: { lines: linesOf(job), neutral: stated?.neutral === false ? 0 : 1, ground: ground === null ? 0 : 1 },
    sets: conductor.sets,
    ampacity_a: conductor.ampacityA,
    required_a: Math.max(flow.requiredA, panelById(tree, feeder.to)?.loadA ?? 0),
    ocpd_a: deviceA,
    ocpd_size_ok: deviceA !== null && deviceProtects(deviceA, conductor.ampacityA),
    method: feeder.method ?? 'not stated',
    section: '215.2',
    grounding_awg: ground,
    length_ft: feeder.lengthFt,
  }
}

function tapRow({ job, tree }: ListInputs, tap: TapNode, tag: string): ConductorValues {
  const stated = own(job.electrical.distribution?.taps, tap.id)
  const { conductor, endDeviceA } = tap
  return {
    tag,
    from: `feeder ${tap.feeder}`,
    to: tap.id,
    circuits: [tap.id],
    size_awg: conductor.size,
    material: conductor.material,
    insulation: stated?.insulation ?? null,
    count: {
      lines: linesOf(job),
      neutral: stated?.neutral === false ? 0 : 1,
      ground: endDeviceA === undefined ? 0 : 1,
    },
    sets: conductor.sets,
    ampacity_a: conductor.ampacityA,
    required_a: Math.max(endDeviceA ?? 0, tap.loadA ?? 0, judgeTap(tree, tap).governs?.sumA ?? 0),
    ocpd_a: endDeviceA ?? null,
    ocpd_size_ok: endDeviceA !== undefined && endDeviceA <= conductor.ampacityA,
    method: tap.method ?? 'not stated',
    section: '240.21(B)',
    grounding_awg: endDeviceA === undefined ? null : equipmentGroundSize(endDeviceA, tap.where),
    length_ft: tap.lengthFt,
  }
}

function serviceRows({ job, tree: { service, panels, feeders } }: ListInputs): ConductorValues[] {
  const { ratingA, ampacityA } = service
  const conductor = service.conductor ?? service.bare
  if (conductor === undefined) return []
  const first = panels.find(({ id }) => !feeders.some(({ to }) => to === id))
  return [
    {
      tag: 'S1',
      from: 'utility',
      to: first?.id ?? SERVICE,
      circuits: [SERVICE],
      size_awg: conductor.size,
      material: conductor.material,
      insulation: job.electrical.service?.conductor_insulation ?? null,
      // The neutral of a service goes to its disconnect, 250.24(C), and carries its fault current.
      count: { lines: linesOf(job), neutral: 1, ground: 0 },
      sets: conductor.sets,
      ampacity_a: ampacityA ?? null,
      required_a: service.loadA ?? 0,
      ocpd_a: ratingA ?? null,
      ocpd_size_ok:
        ampacityA === undefined ? null : ratingA !== undefined && DWELLING_SERVICE_SHARE * ratingA <= ampacityA,
      method: 'service conductors',
      section: '230.42, 310.12',
      grounding_awg: null,
      length_ft: null,
    },
  ]
}

/** Jumper at the end of a metal raceway: by the device, as the ground in it, 250.102(D). */
const groundAt = (sized: readonly SizedSegment[], at: string): string =>
  sized.find(({ segment }) => at.startsWith(`${segment.id} `))?.ground ?? '8'

/** Conductors that carry fault current only: they have a size by table, and no ampacity to compare. */
function groundRows({ grounding, bonding, sized }: ListInputs): ConductorValues[] {
  const rows: { from: string; to: string; size: string; method: string; section: string }[] = [
    {
      from: 'rails and modules',
      to: 'equipment ground',
      size: grounding.array.size_awg,
      method: 'bare',
      section: '690.43',
    },
  ]
  if (grounding.electrode.size_awg !== null)
    rows.push({
      from: 'array',
      to: 'rod at the array',
      size: grounding.electrode.size_awg,
      method: 'bare',
      section: '690.47',
    })
  if (grounding.supply_side_bonding_awg !== null)
    rows.push(
      {
        from: 'PV disconnect',
        to: 'its neutral',
        size: grounding.supply_side_bonding_awg,
        method: 'main bonding jumper',
        section: '250.102(C)',
      },
      {
        from: 'PV disconnect',
        to: 'grounding electrode',
        size: grounding.supply_side_bonding_awg,
        method: 'electrode conductor',
        section: '250.66',
      },
    )
  if (bonding !== undefined) {
    rows.push(
      {
        from: SERVICE,
        to: `electrode (${bonding.electrodes})`,
        size: bonding.electrodeAwg,
        method: 'electrode conductor',
        section: '250.66',
      },
      {
        from: 'service neutral',
        to: 'service enclosure',
        size: bonding.mainJumperAwg,
        method: 'main bonding jumper',
        section: '250.28(D)',
      },
    )
    if (bonding.supplySideJumperAwg !== undefined)
      rows.push({
        from: 'meter and service raceway',
        to: 'service enclosure',
        size: bonding.supplySideJumperAwg,
        method: 'supply-side bonding jumper',
        section: '250.102(C)',
      })
  }
  for (const { at, between } of grounding.raceway_bonding)
    rows.push({
      from: `metal raceway at ${at}`,
      to: 'box or bushing',
      size: groundAt(sized, at),
      method: `bonding jumper where ${between} meet`,
      section: '250.102(D)',
    })
  return rows.map(({ from, to, size, method, section }, i) => ({
    tag: `G${i + 1}`,
    from,
    to,
    circuits: [],
    size_awg: size,
    material: 'copper',
    insulation: null,
    count: { lines: 0, neutral: 0, ground: 0 },
    sets: 1,
    ampacity_a: null,
    required_a: null,
    ocpd_a: null,
    ocpd_size_ok: null,
    method,
    section,
    grounding_awg: size,
    length_ft: null,
  }))
}
