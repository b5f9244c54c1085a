import { LAG_GEOMETRY, LAG_SCREWS, SIDE_PLATES, WET_SERVICE } from '../../tables/nds/index.js'
import { StageError } from '../../worksheet/index.js'
import type { Inches, Pounds } from '../../values/index.js'
import { penetrationIn, threadInRafterIn } from '../fasteners/index.js'
import { need } from '../model/index.js'
import type { LagScrews, MountStrength, StructuralScrewMount } from '../mounts/index.js'
import type { FramingSpec } from '../rafters/index.js'
import type { Chosen, MountProduct } from './equipment-spec.js'
import { needLateral, SHEET, sheetStrength } from './sheet-values.js'

/**
 * Strength of a mount with screws in the rafters of one plane.
 *
 * @throws StageError when a value is missing, the screws do not fit the rafter, or they reach too little into it.
 */
export function screwMount(mount: Chosen<MountProduct>, framing: FramingSpec): MountStrength {
  const { at, product } = mount
  if (product.structural_screw === undefined) {
    const strength = sheetStrength(mount)
    return { ...strength, ...lagScrews(mount, framing, framing.layersIn, strength.lateralLb) }
  }
  if (product.lag !== undefined) {
    throw new StageError(
      `${at}.structural_screw`,
      'the mount has both lag screws and structural screws',
      'State the screws that are used: lag or structural_screw.',
    )
  }
  return structuralScrews(mount, product.structural_screw, framing)
}

/**
 * Lag screws of a mount in the rafters of one plane.
 *
 * @param layersIn What lies between base and rafter, in.
 * @param lateralLb Capacity of the sheet along the slope.
 * @throws StageError when a value is missing, the screws do not fit the rafter, or they reach less than 4 diameters into it.
 */
export function lagScrews(
  mount: Chosen<MountProduct>,
  framing: FramingSpec,
  layersIn: Inches,
  lateralLb: Pounds | undefined,
): LagScrews {
  const { at, product } = mount
  const lag = need(product.lag, `${at}.lag`, 'the lag screw', 'It stands on the data sheet.')
  const plate = need(product.base_plate, `${at}.base_plate`, 'the metal under the head of the screw', SHEET)
  const standsOff = need(
    product.stands_off,
    `${at}.stands_off`,
    'whether the screw bridges a gap',
    'false for a mount that lies on the roof.',
  )
  needSpacing(lag, `${at}.lag`)
  const byTable = plate !== 'other' && !standsOff
  if (!byTable) needLateral(mount, lateralLb)
  const screws: LagScrews = {
    lateralLb,
    lagCount: lag.count,
    lag: {
      size: lag.size,
      lengthIn: lag.length_in,
      threadLengthIn: lag.thread_length_in,
      aboveRafterIn: baseIn(mount) + layersIn,
      rafterDepthIn: framing.depthIn,
    },
    specificGravity: framing.specificGravity,
    plate: byTable && Object.hasOwn(SIDE_PLATES, plate) ? plate : undefined,
    wetFactor: wetFactorOf(framing),
    temperatureFactor: framing.temperatureFactor,
  }
  refuseShortScrew(screws, at)
  return screws
}

/** Withdrawal and lateral loads share this factor for screws of 1/4 in and more. */
function wetFactorOf(framing: FramingSpec): number {
  return framing.wet ? Math.min(WET_SERVICE.withdrawal, WET_SERVICE.lateral) : 1
}

function baseIn({ at, product }: Chosen<MountProduct>): Inches {
  return need(product.base_in, `${at}.base_in`, 'the thickness of mount base and flashing', SHEET)
}

function needSpacing(screw: { readonly count?: number; readonly in_line_spacing_in?: number }, at: string): void {
  if ((screw.count ?? 1) <= 1 || screw.in_line_spacing_in !== undefined) return
  throw new StageError(
    `${at}.in_line_spacing_in`,
    'two screws need their distance along the rafter; side by side does not fit a rafter 1.5 in wide',
    'It stands on the data sheet.',
  )
}

function refuseShortScrew({ lag }: LagScrews, at: string): void {
  const least = LAG_GEOMETRY.leastPenetration * LAG_SCREWS[lag.size].diameterIn
  const reach = Math.min(penetrationIn(lag), threadInRafterIn(lag))
  if (reach >= least) return
  throw new StageError(
    `${at}.lag.length_in`,
    `a ${lag.size} x ${lag.lengthIn} in screw has ${reach.toFixed(2)} in of thread in the rafter after ${lag.aboveRafterIn.toFixed(2)} in of base, covering and sheathing; at least 4 diameters (${least.toFixed(2)} in) are needed`,
    'Choose a longer screw, or one that is threaded further.',
  )
}

type Screw = NonNullable<MountProduct['structural_screw']>

/** Screws with values of their own report: nothing of it is taken from a table. */
function structuralScrews(mount: Chosen<MountProduct>, screw: Screw, framing: FramingSpec): StructuralScrewMount {
  const at = `${mount.at}.structural_screw`
  const of = (key: keyof Screw & `${string}_${string}`, what: string): number =>
    need(screw[key], `${at}.${key}`, what, 'It stands in the report of the screw.')
  need(screw.sheet, `${at}.sheet`, 'the report of the screw', 'State its number and date.')
  of('diameter_in', 'its diameter')
  const count = need(screw.count, `${at}.count`, 'the number of screws', SHEET)
  needSpacing({ ...screw, count }, at)
  const tested = of('tested_specific_gravity', 'the wood that its withdrawal value is for')
  if (framing.specificGravity < tested - 1e-9) {
    throw new StageError(
      `${at}.tested_specific_gravity`,
      `the withdrawal value is for wood of specific gravity ${tested} and more; these rafters have ${framing.specificGravity}`,
      'State the value of the report for this wood.',
    )
  }
  const reach = of('length_in', 'its length') - baseIn(mount) - framing.layersIn
  const thread = Math.max(
    0,
    Math.min(of('thread_length_in', 'its thread'), reach, framing.depthIn) - of('tip_in', 'its tip'),
  )
  const least = of('least_thread_in', 'the least thread in the rafter')
  if (thread < least - 1e-9) {
    throw new StageError(
      `${at}.length_in`,
      `the screw has ${thread.toFixed(2)} in of thread in the rafter; its report asks for ${least.toFixed(2)} in`,
      'Choose a longer screw.',
    )
  }
  refuseEdge(of('edge_distance_in', 'its least distance from the edge of the rafter'), framing, at)
  return {
    kind: 'structural_screw',
    ...sheetStrength(mount),
    screwCount: count,
    withdrawalLb: thread * of('withdrawal_lb_per_in', 'its withdrawal value'),
    screwLateralLb: of('lateral_lb', 'its lateral value'),
    tensionLb: of('tension_lb', 'its allowable tension'),
    serviceFactor: wetFactorOf(framing) * framing.temperatureFactor,
  }
}

function refuseEdge(edgeIn: Inches, framing: FramingSpec, at: string): void {
  if (framing.breadthIn / 2 >= edgeIn) return
  throw new StageError(
    `${at}.edge_distance_in`,
    `a screw that keeps ${edgeIn} in from the edge does not fit a rafter ${framing.breadthIn} in wide`,
    'Choose another screw.',
  )
}
