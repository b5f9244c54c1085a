import type { Pounds } from '../../values/index.js'
import { need } from '../model/index.js'
import type { SheetStrength } from '../mounts/index.js'
import type { Chosen, MountProduct } from './equipment-spec.js'

export const SHEET = 'It stands on the data sheet or test report of the mount.'

/**
 * What a stated capacity allows: itself, or a test load over its safety factor.
 *
 * @throws StageError when an ultimate capacity has no factor.
 */
export function allowableLb({ at, product }: Chosen<MountProduct>, statedLb: Pounds): Pounds {
  if (product.capacity_basis !== 'ultimate') return statedLb
  const factor = need(
    product.safety_factor,
    `${at}.safety_factor`,
    'the factor between ultimate and allowable load',
    'Take it from the report; where the report gives none, 3 is the safe figure.',
  )
  return statedLb / factor
}

/** @throws StageError when uplift or downward capacity is missing. */
export function sheetStrength(mount: Chosen<MountProduct>): SheetStrength {
  const { at, product } = mount
  const of = (statedLb: Pounds): Pounds => allowableLb(mount, statedLb)
  return {
    upliftLb: of(need(product.capacity_uplift_lb, `${at}.capacity_uplift_lb`, 'the allowable uplift', SHEET)),
    downLb: of(need(product.capacity_down_lb, `${at}.capacity_down_lb`, 'the allowable downward load', SHEET)),
    lateralLb: product.capacity_lateral_lb === undefined ? undefined : of(product.capacity_lateral_lb),
    timesDuration: product.multiply_by_load_duration === true,
  }
}

/** Capacity along the slope. @throws StageError when it is missing. */
export function needLateral({ at }: Chosen<MountProduct>, lateralLb: Pounds | undefined): Pounds {
  return need(
    lateralLb,
    `${at}.capacity_lateral_lb`,
    'the load along the slope, which no wood table gives for this base,',
    SHEET,
  )
}

/** Number and date of the report. @throws StageError when one is missing, as the capacities rest on it alone. */
export function testReport({ at, product }: Chosen<MountProduct>): string {
  const id = need(product.test_report?.id, `${at}.test_report.id`, 'the number of the test report', SHEET)
  const date = need(product.test_report?.date, `${at}.test_report.date`, 'the date of the test report', SHEET)
  return `report ${id} of ${date}`
}
