import { CONTINUOUS_FACTOR } from '../../tables/nec/index.js'
import { nextStandardDeviceA, positive, type Circuit, type OptimiserFacts, type StringFacts } from '../system/index.js'

/**
 * The circuit of a string with converters: the rated continuous output of a unit is its maximum current, without the 125
 * percent of the short-circuit current of modules.
 *
 * Its voltage for the drop is the regulated one, or the lowest at which its modules give their power at that current.
 *
 * @source NEC 690.8(A)(5) (2017), 690.8(A)(1)(c) (2020)
 */
export function optimiserCircuit(
  plain: Circuit,
  facts: Omit<StringFacts, 'iscA'>,
  { id, sheet }: Omit<OptimiserFacts, 'units'>,
): Circuit {
  const where = `equipment.optimisers.${id}.output_max_a`
  const outputA = positive(sheet.output_max_a, where, 'the rated output current')
  const powerW = facts.modules * facts.module.pmax_w
  const voltageV = sheet.regulated_string_v ?? powerW / outputA
  const deviceA = nextStandardDeviceA(CONTINUOUS_FACTOR * outputA, plain.where)
  return {
    ...plain,
    voltageV,
    continuousA: outputA,
    operatingA: Math.min(outputA, powerW / voltageV),
    deviceA: plain.deviceA === null ? null : deviceA,
    groundingDeviceA: deviceA,
    smallestDeviceA: deviceA,
    maxDeviceA: sheet.max_string_fuse_a,
    string: {
      ...facts,
      iscA: outputA,
      optimiser: { id, sheet, units: Math.ceil(facts.modules / (sheet.modules_per_unit ?? 1)) },
    },
  }
}
