import { isAc, type CircuitValues, type WiringValues } from '../../electrical/index.js'
import { landingPanel } from '../../project/facts.js'
import type { Need } from './need.js'
import type { TakeOffJob } from './take-off-job.js'
import type { Amperes } from '../../values/index.js'

/** Breakers, combiner panel, disconnects, taps and the connectors of strings. */
export function takeConnection(job: TakeOffJob, wiring: WiringValues): Need[] {
  const electrical = job.project.electrical
  const ac = wiring.circuits.filter(isAc)
  const supplySide = electrical?.connection?.kind === 'supply_side'
  const last = ac.find((circuit) => circuit.kind === 'ac_combined_output')
  const atService = supplySide ? (last ?? ac[0]) : undefined
  const fused = Object.values(electrical?.disconnects ?? {}).some((disconnect) => disconnect.fused === true)
  const fusedEnd = Object.values(electrical?.disconnects ?? {}).some(
    (each) => each.kind === 'pv_system' && each.fused === true,
  )
  const onTap = electrical?.connection?.kind === 'feeder_tap' ? (last ?? ac[0]) : undefined
  const landing = landingName(job, wiring)
  const devices = ac.flatMap((circuit) => {
    if (circuit === atService) return serviceDevice(circuit, fused)
    // Fuses of the disconnect at the end of a tap are counted with it.
    if (circuit === onTap && fusedEnd) return []
    return breaker(circuit, lands(circuit, last) ? landing : undefined)
  })
  const fuseA = (atService ?? onTap)?.breaker_a ?? undefined
  return [
    ...devices,
    ...combinerOf(job, wiring),
    ...disconnectsOf(job, fuseA, wiring.service?.phases === 3 ? 3 : 2),
    ...stringConnectors(wiring),
  ]
}

function each(item: string, name: string, quantity: number, why: string): Need {
  return { item, name, group: 'connection', unit: 'each', quantity, why }
}

const fromCircuit = (circuit: CircuitValues): string => `circuit ${circuit.id} (wire: values.circuits.breaker_a)`

/** Whether a circuit ends where the PV system joins the house. */
const lands = (circuit: CircuitValues, last: CircuitValues | undefined): boolean =>
  circuit === last || (last === undefined && circuit.kind !== 'ac_supply_tap')

/** Where the PV breaker goes in an installation of several panels; undefined in the short form. */
function landingName({ project }: TakeOffJob, { distribution }: WiringValues): string | undefined {
  const { connection, distribution: stated } = project.electrical ?? {}
  if (stated === undefined) return undefined
  const { id } = landingPanel(project.electrical)
  if (connection?.kind === 'feeder_tap') return `at the end of tap ${connection.at ?? ''}`
  return `in ${distribution.find((node) => node.id === id)?.name ?? id}`
}

function breaker(circuit: CircuitValues, place: string | undefined): Need[] {
  if (circuit.breaker_a === null) return []
  const poles = circuit.poles ?? 2
  const name = `Breaker, ${poles === 3 ? 'three' : 'two'} poles, ${circuit.breaker_a} A`
  const why = `1 ${place === undefined ? '' : `${place} `}for ${fromCircuit(circuit)}`
  return [each(`breaker.${poles}p.${circuit.breaker_a}a`, name, 1, why)]
}

/** Where a fused disconnect is the overcurrent device, its fuses are counted with it. */
function serviceDevice(circuit: CircuitValues, fused: boolean): Need[] {
  if (circuit.breaker_a === null) return []
  const device = each(
    `service-overcurrent.${circuit.breaker_a}a`,
    `Overcurrent device of the supply-side connection, ${circuit.breaker_a} A`,
    1,
    `1 for ${fromCircuit(circuit)}`,
  )
  const taps = each(
    'tap-connector',
    'Tap connector on a service conductor',
    (circuit.poles ?? 2) + 1,
    `${circuit.poles === 3 ? 'three' : 'two'} lines and neutral of ${fromCircuit(circuit)}`,
  )
  return fused ? [taps] : [device, taps]
}

function combinerOf(job: TakeOffJob, { combiner }: WiringValues): Need[] {
  if (combiner === null) return []
  const stated = job.project.electrical?.combiner
  const rating = combiner.bus_a === null ? '' : `.${combiner.bus_a}a`
  const spaces = stated?.spaces_total === undefined ? '' : `, ${stated.spaces_total} spaces`
  const place = stated?.location === undefined ? '' : `, for ${stated.location}`
  return [
    {
      ...each(
        `combiner${rating}`,
        `Combiner panel${combiner.bus_a === null ? '' : `, bus ${combiner.bus_a} A`}${spaces}${place}`,
        1,
        'gathers the circuits (wire: values.combiner)',
      ),
      general: 'combiner',
    },
    ...(stated?.other_breakers_a ?? []).map((rating) =>
      each(
        `breaker.2p.${rating}a`,
        `Breaker, two poles, ${rating} A`,
        1,
        `other breaker in the combiner (electrical.combiner.other_breakers_a)`,
      ),
    ),
  ]
}

/** @param fuseA Rating that the wiring asks of the fuses, A; that of the disconnect when it asks for none. */
function disconnectsOf(job: TakeOffJob, fuseA: Amperes | undefined, acPoles: 2 | 3): Need[] {
  return Object.entries(job.project.electrical?.disconnects ?? {}).flatMap(([id, disconnect]): Need[] => {
    const { kind, rating_a: rating, fused } = disconnect
    const rated = rating === undefined ? '' : `.${rating}a`
    const place = `electrical.disconnects.${id}`
    const circuitFuseA = kind === 'pv_system' ? fuseA : undefined
    const fuse = circuitFuseA ?? rating
    const poles = kind === 'dc' ? 2 : acPoles
    return [
      {
        ...each(
          `disconnect.${kind}${rated}${fused === true ? '.fused' : ''}`,
          `Disconnect (${kind.replace('_', ' ')})${rating === undefined ? '' : `, ${rating} A`}${fused === true ? ', fused' : ''}`,
          1,
          `disconnect ${id} (${place})`,
        ),
        general: `disconnect.${kind}`,
      },
      {
        ...each(
          fuse === undefined ? 'fuse' : `fuse.${fuse}a`,
          fuse === undefined ? 'Fuse' : `Fuse, ${fuse} A`,
          fused === true ? poles : 0,
          `${poles} poles of disconnect ${id} (${place}${circuitFuseA === undefined ? '' : ', wire: values.circuits.breaker_a'})`,
        ),
        general: 'fuse',
      },
    ]
  })
}

function stringConnectors(wiring: WiringValues): Need[] {
  const strings = wiring.circuits.filter((circuit) => circuit.kind === 'dc_string')
  return [
    each(
      'dc-connector-pair',
      'Pair of DC connectors for the ends of a string, of the make of the module',
      strings.length,
      `one for each of ${strings.length} strings (wire: values.strings)`,
    ),
    {
      ...each(
        'cord-grip',
        'Strain relief, rain tight',
        strings.length,
        `where each of ${strings.length} strings enters its box (wire: values.strings)`,
      ),
      group: 'raceway',
    },
  ]
}
