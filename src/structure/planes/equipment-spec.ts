import type { Project } from '../../project/index.js'
import { LAG_GEOMETRY, LAG_SCREWS, SIDE_PLATES, WET_SERVICE } from '../../tables/nds/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import { own, type PoundsPerSquareInch } from '../../values/index.js'
import type { FramingSpec } from '../rafters/index.js'
import { penetrationIn, threadInRafterIn } from '../fasteners/index.js'
import type { MountStrength } from '../mounts/index.js'
import { need } from '../model/index.js'
import { allowableBendingKsi, allowableShearKsi, type RailStrength } from '../rails/index.js'

const SHEET = 'It stands on the data sheet.'

type Equipment = Project['equipment']
export type RailProduct = NonNullable<Equipment['rails']>[string]
export type MountProduct = NonNullable<Equipment['mounts']>[string]

/** A product with its path in the project file. */
export interface Chosen<Product> {
  readonly id: string
  readonly at: string
  readonly product: Product
}

/** @throws StageError when no rail is chosen or the id is unknown. */
export function chosenRail(project: Project): Chosen<RailProduct> {
  const id = need(
    project.structure?.rail,
    'structure.rail',
    'the rail',
    'State the id of a rail under equipment.rails.',
  )
  const product = own(project.equipment.rails, id)
  return {
    id,
    at: `equipment.rails.${id}`,
    product: need(
      product,
      'structure.rail',
      `a rail '${id}' under equipment.rails`,
      'Define it there from its data sheet.',
    ),
  }
}

/** @throws StageError when no mount is chosen or the id is unknown. */
export function chosenMount(project: Project): Chosen<MountProduct> {
  const id = need(
    project.structure?.mount,
    'structure.mount',
    'the mount',
    'State the id of a mount under equipment.mounts.',
  )
  const product = own(project.equipment.mounts, id)
  return {
    id,
    at: `equipment.mounts.${id}`,
    product: need(
      product,
      'structure.mount',
      `a mount '${id}' under equipment.mounts`,
      'Define it there from its data sheet.',
    ),
  }
}

/**
 * Strength of the rail, from the sheet's allowable values where they are given, otherwise from section and alloy.
 *
 * @throws StageError when neither is complete.
 */
export function railStrength({ at, product: rail }: Chosen<RailProduct>, worksheet: Worksheet): RailStrength {
  const bendingPsi = (): PoundsPerSquareInch =>
    1000 * allowableBendingKsi(need(rail.alloy, `${at}.alloy`, 'the alloy or allowable_moment_x_lb_in', SHEET))
  const sectionX = (): number =>
    need(
      rail.section_modulus_x_in3,
      `${at}.section_modulus_x_in3`,
      'the section modulus or allowable_moment_x_lb_in',
      SHEET,
    )
  const momentY =
    rail.allowable_moment_y_lb_in ??
    (rail.section_modulus_y_in3 === undefined || rail.alloy === undefined
      ? undefined
      : bendingPsi() * rail.section_modulus_y_in3)
  const shear =
    rail.allowable_shear_lb ??
    (rail.shear_area_in2 === undefined || rail.alloy === undefined
      ? undefined
      : 1000 * allowableShearKsi(rail.alloy) * rail.shear_area_in2)
  return {
    momentXLbIn: rail.allowable_moment_x_lb_in ?? bendingPsi() * sectionX(),
    momentYLbIn: momentY,
    shearLb: shear,
    momentOfInertiaXIn4: need(
      rail.moment_of_inertia_x_in4,
      `${at}.moment_of_inertia_x_in4`,
      'the moment of inertia',
      SHEET,
    ),
    deflectionLimit:
      rail.deflection_limit ??
      worksheet.assume({
        path: `${at}.deflection_limit`,
        value: 180,
        unit: '',
        why: 'no code limits the deflection of a module rail; span / 180 is the stricter end of what is usual',
        source: {
          document: 'Trade practice for aluminium rails, span / 120 to span / 180',
          standing: 'common practice, no source',
        },
      }),
  }
}

/**
 * Strength of the mount with its screws in the rafters of one plane.
 *
 * @throws StageError when a value is missing, the screws do not fit the rafter, or they reach less than 4 diameters into it.
 */
export function mountStrength({ at, product: mount }: Chosen<MountProduct>, framing: FramingSpec): MountStrength {
  const lag = need(mount.lag, `${at}.lag`, 'the lag screw', SHEET)
  const plate = need(mount.base_plate, `${at}.base_plate`, 'the metal under the head of the screw', SHEET)
  const standsOff = need(
    mount.stands_off,
    `${at}.stands_off`,
    'whether the screw bridges a gap',
    'false for a mount that lies on the roof.',
  )
  if (lag.count > 1 && lag.in_line_spacing_in === undefined) {
    throw new StageError(
      `${at}.lag.in_line_spacing_in`,
      'two screws need their distance along the rafter; side by side does not fit a rafter 1.5 in wide',
      SHEET,
    )
  }
  const byTable = plate !== 'other' && !standsOff
  if (!byTable) {
    need(
      mount.capacity_lateral_lb,
      `${at}.capacity_lateral_lb`,
      'the load along the slope, which no wood table gives for this base,',
      'It stands on the data sheet or test report of the mount.',
    )
  }
  const strength: MountStrength = {
    upliftLb: need(mount.capacity_uplift_lb, `${at}.capacity_uplift_lb`, 'the allowable uplift', SHEET),
    downLb: need(mount.capacity_down_lb, `${at}.capacity_down_lb`, 'the allowable downward load', SHEET),
    lateralLb: mount.capacity_lateral_lb,
    lagCount: lag.count,
    lag: {
      size: lag.size,
      lengthIn: lag.length_in,
      threadLengthIn: lag.thread_length_in,
      aboveRafterIn:
        need(mount.base_in, `${at}.base_in`, 'the thickness of mount base and flashing', SHEET) + framing.layersIn,
      rafterDepthIn: framing.depthIn,
    },
    specificGravity: framing.specificGravity,
    plate: byTable && plate in SIDE_PLATES ? plate : undefined,
    // Withdrawal and lateral loads share this factor for lag screws of 1/4 in and more.
    wetFactor: framing.wet ? Math.min(WET_SERVICE.withdrawal, WET_SERVICE.lateral) : 1,
    temperatureFactor: framing.temperatureFactor,
  }
  refuseShortScrew(strength, at)
  return strength
}

function refuseShortScrew({ lag }: MountStrength, at: string): void {
  const least = LAG_GEOMETRY.leastPenetration * LAG_SCREWS[lag.size].diameterIn
  const reach = Math.min(penetrationIn(lag), threadInRafterIn(lag))
  if (reach >= least) return
  throw new StageError(
    `${at}.lag.length_in`,
    `a ${lag.size} x ${lag.lengthIn} in screw has ${reach.toFixed(2)} in of thread in the rafter after ${lag.aboveRafterIn.toFixed(2)} in of base, covering and sheathing; at least 4 diameters (${least.toFixed(2)} in) are needed`,
    'Choose a longer screw, or one that is threaded further.',
  )
}
