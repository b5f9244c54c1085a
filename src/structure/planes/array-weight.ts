import type { RoofProject } from '../../project/index.js'
import type { ModulePlacement } from '../../roof/index.js'
import { own, type Inches, type Pounds, type PoundsPerSquareFoot } from '../../values/index.js'
import type { MountProduct, RailProduct } from './equipment-spec.js'
import { need } from '../model/index.js'

/** Dead load of an array per surface area of its modules, psf. */
export interface ArrayDead {
  /** Modules alone: what surely holds against uplift. */
  readonly leastPsf: PoundsPerSquareFoot
  /** Modules, inverters or converters behind them, two rails, and a mount on every rafter. */
  readonly mostPsf: PoundsPerSquareFoot
  readonly moduleWeightLb: Pounds
}

const SHEET = 'It stands on the data sheet.'

/** What holds the modules, with the paths of the sheets. */
export interface HoldingParts {
  readonly rail: { readonly at: string; readonly product: RailProduct }
  readonly mount: { readonly at: string; readonly product: MountProduct }
}

/**
 * Dead load of the array of a module.
 *
 * @throws StageError when a weight is missing.
 */
export function arrayDead(
  project: RoofProject,
  module: ModulePlacement,
  { rail, mount }: HoldingParts,
  rafterSpacingIn: Inches,
): ArrayDead {
  const arrayId = module.array
  const array = need(own(project.arrays, arrayId), `arrays.${arrayId}`, `array '${arrayId}'`, 'Define it under arrays.')
  const product = own(project.equipment.modules, array.module)
  const moduleLb = need(
    product?.weight_lb,
    `equipment.modules.${array.module}.weight_lb`,
    'the weight of the module',
    SHEET,
  )
  const inverter = array.inverter === undefined ? undefined : own(project.equipment.inverters, array.inverter)
  const inverterLb =
    array.inverter === undefined
      ? 0
      : need(
          inverter?.weight_lb,
          `equipment.inverters.${array.inverter}.weight_lb`,
          'the weight of the inverter',
          SHEET,
        )
  const converterLb =
    array.optimiser === undefined
      ? 0
      : need(
          own(project.equipment.optimisers, array.optimiser)?.weight_lb,
          `equipment.optimisers.${array.optimiser}.weight_lb`,
          'the weight of the converter',
          SHEET,
        )
  // A converter for several modules hangs on one of them.
  const behindLb = inverterLb + converterLb
  const railLbPerFt = need(
    rail.product.weight_lb_per_ft,
    `${rail.at}.weight_lb_per_ft`,
    'the weight of the rail',
    SHEET,
  )
  const mountLb = need(mount.product.weight_lb, `${mount.at}.weight_lb`, 'the weight of the mount', SHEET)
  const area = module.widthFt * module.heightFt
  const linesPsf = (2 * (railLbPerFt + mountLb / (rafterSpacingIn / 12))) / module.heightFt
  return {
    leastPsf: moduleLb / area,
    mostPsf: (moduleLb + behindLb) / area + linesPsf,
    moduleWeightLb: moduleLb + behindLb,
  }
}
