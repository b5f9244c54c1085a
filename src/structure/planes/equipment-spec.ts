import type { RoofProject } from '../../project/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { own, type PoundsPerSquareInch } from '../../values/index.js'
import { need } from '../model/index.js'
import { allowableBendingKsi, allowableShearKsi, type RailStrength } from '../rails/index.js'

const SHEET = 'It stands on the data sheet.'

type Equipment = RoofProject['equipment']
export type RailProduct = NonNullable<Equipment['rails']>[string]
export type MountProduct = NonNullable<Equipment['mounts']>[string]

/** A product with its path in the project file. */
export interface Chosen<Product> {
  readonly id: string
  readonly at: string
  readonly product: Product
}

/** @throws StageError when no rail is chosen or the id is unknown. */
export function chosenRail(project: RoofProject): Chosen<RailProduct> {
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
export function chosenMount(project: RoofProject): Chosen<MountProduct> {
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
