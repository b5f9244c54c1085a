import { evenSnow, heapedSnow } from './snow-case.js'
import { driftHeightFormula } from './drift-height.js'
import {
  balancedInput,
  groundInput,
  windInput,
  type BaseSnow,
  type SnowOnPlane,
  type WorkedSnow,
} from './snow-on-plane.js'
import { isUnbalancedSlope, unbalancedForms, unbalancedSnow } from './unbalanced-snow.js'

/** Unbalanced cases; undefined when the edition needs W2 for one of them and it is not stated. */
export function unbalancedCases(on: SnowOnPlane, base: BaseSnow): WorkedSnow[] | undefined {
  if (on.ridge === undefined || !isUnbalancedSlope(on.snow.tiltDeg)) return []
  const forms = unbalancedForms(on.depthFt, on.ridge.framing)
  const whole = forms.whole ? wholeCases(on, base) : []
  if (!forms.heap) return whole
  const heap = heapCases(on, base, on.ridge.windwardFt)
  return heap === undefined ? undefined : [...whole, ...heap]
}

/** What goes without W2, when the other form has to be left out. */
export function casesWithoutWind(on: SnowOnPlane, base: BaseSnow): WorkedSnow[] {
  if (on.ridge === undefined || !isUnbalancedSlope(on.snow.tiltDeg)) return []
  return unbalancedForms(on.depthFt, on.ridge.framing).whole ? wholeCases(on, base) : []
}

function wholeCases(on: SnowOnPlane, base: BaseSnow): WorkedSnow[] {
  const { plane, depthFt } = on
  const ridge = { symbol: 'W', value: depthFt, unit: 'ft', from: `roof_planes.${plane}` }
  const leeward: WorkedSnow = {
    kind: 'unbalanced',
    snowCase: evenSnow('unbalanced, leeward', depthFt, base.groundPsf),
    says: `Unbalanced snow when plane ${plane} is leeward, rafters from eave to ridge, W up to 20 ft`,
    formula: 'p = pg',
    inputs: [groundInput(base), ridge],
    place: '7.6.1',
  }
  const windward: WorkedSnow = {
    kind: 'unbalanced',
    snowCase: evenSnow('unbalanced, windward', depthFt, 0),
    says: `Unbalanced snow when plane ${plane} is windward, rafters from eave to ridge, W up to 20 ft`,
    formula: 'p = 0',
    inputs: [ridge],
    place: '7.6.1',
  }
  return [leeward, windward]
}

function heapCases(on: SnowOnPlane, base: BaseSnow, windwardFt: number): WorkedSnow[] | undefined {
  const { plane, depthFt } = on
  const found = unbalancedSnow({ ...base, tiltDeg: on.snow.tiltDeg, windwardFt })
  if (found === undefined) return undefined
  const heap = {
    depthFt,
    basePsf: base.balancedPsf,
    atEndPsf: found.surchargePsf,
    atFootPsf: found.surchargePsf,
    widthFt: found.extentFt,
  }
  const leeward: WorkedSnow = {
    kind: 'unbalanced',
    snowCase: heapedSnow('unbalanced, heap behind the ridge', 'top', heap),
    says: `Unbalanced snow when plane ${plane} is leeward: balanced snow and a heap behind the ridge`,
    formula: `p = ps + hd gamma / sqrt(S) over 8 sqrt(S) hd / 3 from the ridge; ${driftHeightFormula(base.edition)}`,
    inputs: [
      groundInput(base),
      balancedInput(base, on),
      {
        symbol: 'lu',
        value: found.fetchFt,
        unit: 'ft',
        from: 'structure.building.opposite_eave_to_ridge_ft, with the least of the edition',
      },
      ...windInput(base),
      { symbol: 'gamma', value: found.densityPcf, unit: 'lb/ft3', from: '0.13 pg + 14, at most 30' },
      { symbol: 'S', value: found.run, unit: '', from: `roof_planes.${plane}: run for a rise of one` },
      { symbol: 'hd', value: found.heightFt, unit: 'ft', from: 'figure 7.6-1' },
      { symbol: 'surcharge', value: found.surchargePsf, unit: 'psf', from: 'hd gamma / sqrt(S)' },
      { symbol: 'extent', value: found.extentFt, unit: 'ft', from: '8 sqrt(S) hd / 3' },
    ],
    place: '7.6.1 and figure 7.6-2',
  }
  const windward: WorkedSnow = {
    kind: 'unbalanced',
    snowCase: evenSnow('unbalanced, 0.3 of balanced', depthFt, found.windwardPsf),
    says: `Unbalanced snow when plane ${plane} is windward`,
    formula: 'p = 0.3 ps',
    inputs: [balancedInput(base, on)],
    place: '7.6.1',
  }
  return [leeward, windward]
}
