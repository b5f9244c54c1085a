import type { StepInput } from '../../worksheet/index.js'
import { SLIDING_SNOW, SNOW_RULES } from '../../tables/asce7/index.js'
import { driftHeightFormula } from './drift-height.js'
import { slidesOff, slidingSnow } from './sliding-snow.js'
import { evenSnow, heapedSnow, type HeapedSnow, type SnowCase } from './snow-case.js'
import {
  balancedInput,
  groundInput,
  windInput,
  type BaseSnow,
  type HigherRoof,
  type Parapet,
  type PlaneEnd,
  type SnowOnPlane,
  type WorkedSnow,
} from './snow-on-plane.js'
import { stepDrifts, wallDrifts, type DriftsAtWall, type SnowDrift } from './step-drift.js'

/** Drifts below a higher roof; undefined when W2 is needed and not stated. */
export function stepDriftCases(on: SnowOnPlane, base: BaseSnow, roof: HigherRoof): WorkedSnow[] | undefined {
  const found = stepDrifts({ ...base, ...roof })
  const step: StepInput = {
    symbol: 'step',
    value: roof.stepFt,
    unit: 'ft',
    from: `structure.snow.higher_roofs.${roof.id}.step_ft`,
  }
  const gap: StepInput = {
    symbol: 'gap',
    value: roof.gapFt,
    unit: 'ft',
    from: `structure.snow.higher_roofs.${roof.id}.gap_ft`,
  }
  const wall = { name: `below roof ${roof.id}`, end: roof.end, inputs: [step, gap], place: '7.7.1 and 7.7.2' }
  return driftCases(on, base, found, wall)
}

/** Drift at a parapet or another wall above the plane; undefined when W2 is needed and not stated. */
export function parapetDriftCases(on: SnowOnPlane, base: BaseSnow, parapet: Parapet): WorkedSnow[] | undefined {
  const found = wallDrifts({ ...base, ...parapet })
  const at = `structure.snow.parapets.${parapet.id}`
  const inputs: StepInput[] = [
    { symbol: 'height', value: parapet.heightFt, unit: 'ft', from: `${at}.height_ft` },
    { symbol: 'length', value: parapet.lengthFt, unit: 'ft', from: `${at}.length_ft` },
  ]
  return driftCases(on, base, found, { name: `at parapet ${parapet.id}`, end: parapet.end, inputs, place: '7.8' })
}

/** A wall against which snow drifts, as the cases name it. */
interface NamedWall {
  readonly name: string
  readonly end: PlaneEnd
  readonly inputs: readonly StepInput[]
  readonly place: string
}

function driftCases(on: SnowOnPlane, base: BaseSnow, found: DriftsAtWall, wall: NamedWall): WorkedSnow[] | undefined {
  const { drifts, none } = found
  if (drifts === undefined) return undefined
  if (none === undefined) return drifts.map((drift) => driftCase(on, base, { found, drift, wall }))
  const noDrift: WorkedSnow = {
    kind: 'drift',
    snowCase: evenSnow(`no drift ${wall.name}`, on.depthFt, base.balancedPsf),
    says: `No drift ${wall.name} on plane ${on.plane}: ${none}`,
    formula: 'p = ps',
    inputs: [balancedInput(base, on), ...wall.inputs],
    place: wall.place,
  }
  return [noDrift]
}

interface FoundDrift {
  readonly found: DriftsAtWall
  readonly drift: SnowDrift
  readonly wall: NamedWall
}

function driftCase(on: SnowOnPlane, base: BaseSnow, { found, drift, wall }: FoundDrift): WorkedSnow {
  const name = `drift ${wall.name}, ${drift.wind}`
  const heap = {
    depthFt: on.depthFt,
    basePsf: base.balancedPsf,
    atEndPsf: drift.peakPsf,
    atFootPsf: 0,
    widthFt: drift.widthFt,
  }
  const widths = drift.wind === 'leeward' ? 4 : SNOW_RULES[base.edition].windwardWidths
  return {
    kind: 'drift',
    snowCase: atEnd(name, wall.end, heap),
    says: `Snow that the wind drifts ${wall.name} onto plane ${on.plane}, ${drift.wind}`,
    formula: `p = ps + gamma h at the wall, falling to ps at w; h = ${drift.wind === 'leeward' ? 'hd' : '0.75 hd'}, at most hc; w = ${widths} h; ${driftHeightFormula(base.edition)}`,
    inputs: [
      groundInput(base),
      balancedInput(base, on),
      ...wall.inputs,
      { symbol: 'lu', value: drift.fetchFt, unit: 'ft', from: 'fetch, with the least of the edition' },
      ...windInput(base),
      { symbol: 'gamma', value: found.densityPcf, unit: 'lb/ft3', from: '0.13 pg + 14, at most 30' },
      { symbol: 'hb', value: found.balancedHeightFt, unit: 'ft', from: 'ps / gamma' },
      { symbol: 'hc', value: found.clearFt, unit: 'ft', from: 'wall less hb' },
      { symbol: 'h', value: drift.heightFt, unit: 'ft', from: 'figure 7.6-1' },
      { symbol: 'w', value: drift.widthFt, unit: 'ft', from: 'section 7.7.1' },
      { symbol: 'pd', value: drift.peakPsf, unit: 'psf', from: 'gamma h' },
    ],
    place: wall.place,
    ...(wall.end === 'side' ? { limits: SIDE } : {}),
  }
}

const SIDE =
  'the wall is at the side of the plane: the load beside it is taken for all of the plane, which is the safe side'

/** Snow that slides down from a higher roof onto balanced snow. */
export function slidingCases(on: SnowOnPlane, base: BaseSnow, roof: HigherRoof): WorkedSnow[] {
  const reaches = roof.gapFt < SLIDING_SNOW.overFt
  if (!reaches || !slidesOff(roof.upperSlopeDeg, roof.upperSlippery)) return []
  const slid = slidingSnow(base.flatPsf, roof.upperEaveToRidgeFt)
  if (slid.psf <= 0) return []
  const heap = {
    depthFt: on.depthFt,
    basePsf: base.balancedPsf,
    atEndPsf: slid.psf,
    atFootPsf: slid.psf,
    widthFt: SLIDING_SNOW.overFt,
  }
  const at = `structure.snow.higher_roofs.${roof.id}`
  const sliding: WorkedSnow = {
    kind: 'sliding',
    snowCase: atEnd(`sliding from roof ${roof.id}`, roof.end, heap),
    says: `Snow that slides from roof ${roof.id} onto the balanced snow of plane ${on.plane}`,
    formula: 'p = ps + 0.4 pf W / 15 ft, over 15 ft from the eave of the higher roof',
    inputs: [
      balancedInput(base, on),
      { symbol: 'pf', value: base.flatPsf, unit: 'psf', from: 'structure.flat-roof-snow' },
      { symbol: 'W', value: roof.upperEaveToRidgeFt, unit: 'ft', from: `${at}.upper_eave_to_ridge_ft` },
      { symbol: '0.4 pf W', value: slid.perFootPlf, unit: 'lb/ft', from: 'section 7.9' },
    ],
    place: '7.9',
    limits: `balanced snow alone; not reduced for a gap${roof.end === 'side' ? `; ${SIDE}` : ''}`,
  }
  return [sliding]
}

function atEnd(name: string, end: PlaneEnd, heap: HeapedSnow): SnowCase {
  if (end === 'side') return evenSnow(name, heap.depthFt, heap.basePsf + heap.atEndPsf)
  return heapedSnow(name, end, heap)
}
