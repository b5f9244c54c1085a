import { ALUMINIUM_LB_PER_FT_IN2, MOUNTING_RANGES } from '../../../tables/equipment/index.js'
import { LAG_SCREWS } from '../../../tables/nds/index.js'
import { sectionOf } from '../../../tables/nec/index.js'
import type { Source } from '../../../worksheet/index.js'
import type { Mount, Optimiser, Rail, TrunkCable } from '../../project-types.generated.js'
import { rounded, type Doubts } from './doubts.js'

const BY_MEANING: Source = { document: 'meaning of the values of the sheet', standing: 'common practice, no source' }

/** Conductors outside the boundary, V: the same in the editions from 2014. */
const SHUTDOWN_V = 30

/** What does not fit together on the sheet of a DC-to-DC converter. */
export function doubtOptimiser(optimiser: Optimiser, doubts: Doubts): void {
  const { max_input_power_w: power, input_max_v: volts, max_isc_a: amps, output_max_v: output } = optimiser
  if (power !== undefined && power > volts * amps)
    doubts.add('warning', 'equipment.converter', 'max_input_power_w', {
      message: `${power} W is more than input_max_v x max_isc_a = ${rounded(volts * amps)} W, so that no module reaches it`,
      source: BY_MEANING,
    })
  if (power !== undefined && output !== undefined && output * optimiser.output_max_a < power)
    doubts.add('warning', 'equipment.converter', 'output_max_a', {
      message: `output_max_v x output_max_a = ${rounded(output * optimiser.output_max_a)} W is less than max_input_power_w ${power} W`,
      source: BY_MEANING,
    })
  const { shutdown_v: off, max_per_string: most } = optimiser
  if (optimiser.rapid_shutdown !== true || off === undefined || most === undefined || off * most <= SHUTDOWN_V) return
  doubts.add('warning', 'equipment.converter', 'shutdown_v', {
    message: `a string of ${most} keeps ${rounded(off * most)} V after shutdown, more than ${SHUTDOWN_V} V`,
    source: sectionOf('NEC 2020', 'rapidShutdown'),
  })
}

/** What does not fit together on the sheet of a trunk cable. */
export function doubtTrunkCable({ ampacity_a: ampacity, max_ocpd_a: device }: TrunkCable, doubts: Doubts): void {
  if (device === undefined || device <= ampacity) return
  doubts.add('warning', 'equipment.trunk-cable', 'max_ocpd_a', {
    message: `a device of ${device} A lets more pass than the cable carries, ${ampacity} A`,
    source: BY_MEANING,
  })
}

/** What does not fit together on the sheet of a rail. */
export function doubtRail(rail: Rail, doubts: Doubts): void {
  const { section_modulus_x_in3: modulus, moment_of_inertia_x_in4: inertia } = rail
  const half = modulus === undefined || inertia === undefined ? undefined : inertia / modulus
  const name = 'half of the height, moment_of_inertia_x_in4 over section_modulus_x_in3,'
  doubts.outside('equipment.rail-section', 'section_modulus_x_in3', name, half, MOUNTING_RANGES.railHalfHeightIn)
  const { shear_area_in2: web, weight_lb_per_ft: weight } = rail
  if (web !== undefined && weight !== undefined && web * ALUMINIUM_LB_PER_FT_IN2.value > weight)
    doubts.add('error', 'equipment.rail-section', 'shear_area_in2', {
      message: `webs of ${web} in2 alone weigh ${rounded(web * ALUMINIUM_LB_PER_FT_IN2.value)} lb per ft in aluminium, more than the rail, ${weight} lb per ft`,
      source: ALUMINIUM_LB_PER_FT_IN2.source,
    })
  const { max_cantilever_in: end, max_span_in: span, max_cantilever_of_span: share } = rail
  const ofSpan = end === undefined || span === undefined ? undefined : end / span
  const free = 'max_cantilever_in over max_span_in'
  doubts.outside('equipment.rail-overhang', 'max_cantilever_in', free, ofSpan, MOUNTING_RANGES.overhangShare)
  const { overhangShare } = MOUNTING_RANGES
  doubts.outside('equipment.rail-overhang', 'max_cantilever_of_span', 'max_cantilever_of_span', share, overhangShare)
}

/** What does not fit together on the sheet of a mount. */
export function doubtMount(mount: Mount, doubts: Doubts): void {
  const { lag, capacity_basis: basis, safety_factor: factor } = mount
  if (lag?.lead_hole_in !== undefined && lag.lead_hole_in >= LAG_SCREWS[lag.size].diameterIn)
    doubts.add('error', 'equipment.screw-hole', 'lag.lead_hole_in', {
      message: `a lead hole of ${lag.lead_hole_in} in leaves a screw of ${lag.size} in nothing to hold in`,
      source: BY_MEANING,
    })
  if (lag?.thread_length_in !== undefined && lag.thread_length_in > lag.length_in)
    doubts.add('error', 'equipment.screw-hole', 'lag.thread_length_in', {
      message: `${lag.thread_length_in} in of thread do not fit on a screw of ${lag.length_in} in`,
      source: BY_MEANING,
    })
  if (basis === 'ultimate' && factor === undefined)
    doubts.add('warning', 'equipment.mount-capacity', 'capacity_basis', {
      message: 'ultimate capacities without safety_factor are not used by space-mounts',
      source: BY_MEANING,
      fix: 'state the factor of the test report',
    })
  const { mountWeightLb } = MOUNTING_RANGES
  doubts.outside('equipment.mount-capacity', 'weight_lb', 'the weight of one mount', mount.weight_lb, mountWeightLb)
}
