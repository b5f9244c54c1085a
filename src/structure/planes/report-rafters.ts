import { lumberSource } from '../../tables/nds/index.js'
import { poundFeetOf } from '../../values/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import {
  type CheckedRafter,
  placeOf,
  type WorstCheck,
  type RafterResult,
  tieFactor,
  type WoodStrength,
  worstCheck,
} from '../rafters/index.js'
import { IRC, type RaftersToReport } from './rafters-to-report.js'
import { reportCodeLets, reportCodePath } from './report-code-path.js'
import { reportHips, reportNotChecked, reportSeat, reportSharing, reportSupports } from './report-framing.js'
import { reportTableSpan } from './report-table-span.js'
import { reportLift, reportThrust } from './report-thrust.js'

/** Writes steps and findings of the rafters of one plane. */
export function reportRafters(rafters: RaftersToReport, worksheet: Worksheet): void {
  const { id, input, result } = rafters
  reportCodePath(rafters, worksheet)
  reportSupports(id, input.framing, worksheet)
  reportSharing(id, input.framing, worksheet)
  if (result.wood === undefined) {
    reportNotChecked(rafters, worksheet)
    return
  }
  reportSeat(id, input, worksheet)
  reportHips(rafters, worksheet)
  const bending = worstCheck(result.rafters, 'bending')
  if (bending === undefined) return
  reportBending(rafters, result.wood, bending, worksheet)
  reportOthers(id, result, worksheet)
  reportThrust(rafters, result.wood, bending, worksheet)
  reportTableSpan(id, input, worksheet)
  reportCodeLets(rafters, worksheet)
  reportLift(rafters, worksheet)
}

/** The strength of the wood for the governing bending. */
function recordStrength(
  { id, input }: RaftersToReport,
  wood: WoodStrength,
  { check }: WorstCheck,
  worksheet: Worksheet,
): void {
  const path = `structure.framing.${id}`
  const { factors } = wood
  const tie = tieFactor(input.framing)
  worksheet.step({
    id: `structure.${id}.rafter-strength`,
    says: `Bending strength of the rafters for ${check.combination}`,
    formula: `Fb' = Fb CD CL CF Cr CM Ct Ci${tie < 1 ? ' K' : ''}`,
    inputs: [
      {
        symbol: 'Fb',
        value: wood.reference.bendingPsi,
        unit: 'psi',
        from: `NDS Supplement, ${wood.species} ${wood.grade}`,
      },
      { symbol: 'CD', value: check.loadDuration, unit: '', from: 'table 2.3.2, the shortest load that is there' },
      {
        symbol: 'CL',
        value: check.stability,
        unit: '',
        from:
          check.stability < 1
            ? '3.3.3, the lower edge is pressed and not held'
            : '3.3.3.1, sheathing holds the upper edge',
      },
      { symbol: 'CF', value: factors.size, unit: '', from: `${path}.nominal_size` },
      { symbol: 'Cr', value: factors.repetitive, unit: '', from: `${path}.spacing_in` },
      { symbol: 'CM', value: factors.wetBending, unit: '', from: `${path}.wet_service` },
      { symbol: 'Ct', value: factors.temperature, unit: '', from: `${path}.sustained_temperature` },
      { symbol: 'Ci', value: factors.incised, unit: '', from: `${path}.incised` },
      ...(tie < 1 ? [{ symbol: 'K', value: tie, unit: '', from: 'IRC table R802.4.1(9), raised ties, squared' }] : []),
    ],
    result: { symbol: "Fb'", value: check.capacity, unit: 'psi' },
    source: lumberSource(wood.species),
    limits: 'current design values; the wood is sound, and not notched between its supports',
  })
}

/** The governing bending: strength, stress, and every combination line by line. */
function reportBending(rafters: RaftersToReport, wood: WoodStrength, worst: WorstCheck, worksheet: Worksheet): void {
  const { id } = rafters
  const { rafter, check } = worst
  const path = `structure.framing.${id}`
  recordStrength(rafters, wood, worst, worksheet)
  worksheet.step({
    id: `structure.${id}.rafter-stress`,
    says: `Bending stress of ${placeOf(id, rafter.number, check.place)}, ${check.atFt.toFixed(2)} ft from its lower support`,
    formula: 'fb = M / S, S = b d^2 / 6',
    inputs: [
      { symbol: 'M', value: poundFeetOf(Math.abs(check.action)), unit: 'lb-ft', from: check.combination },
      { symbol: 'b', value: wood.breadthIn, unit: 'in', from: `${path}.nominal_size` },
      { symbol: 'd', value: wood.depthIn, unit: 'in', from: `${path}.nominal_size` },
      { symbol: 'S', value: wood.sectionModulusIn3, unit: 'in3', from: 'b and d' },
    ],
    result: { symbol: 'fb', value: check.demand, unit: 'psi' },
    source: { document: 'Statics of a beam', standing: 'read' },
    limits: 'mounts as single forces where they stand; a span as if it ended at its supports, and as if it ran through',
  })
  recordCombinations(id, rafter, wood, worksheet)
}

/** Every combination of a rafter with what each load brings. */
function recordCombinations(id: string, rafter: CheckedRafter, wood: WoodStrength, worksheet: Worksheet): void {
  for (const [index, line] of rafter.lines.entries()) {
    worksheet.step({
      id: `structure.${id}.rafter-combination-${index + 1}`,
      says: `Rafter ${rafter.number}, ${line.name}`,
      formula: "fb = M / S <= Fb', M = sum of each factor times its moment",
      inputs: [
        ...line.shares().map((share) => ({
          symbol: `${plainFactor(share.factor)} M(${share.kind})`,
          value: share.factor * poundFeetOf(share.momentLbIn),
          unit: 'lb-ft',
          from: `${line.atFt.toFixed(2)} ft from the lower support`,
        })),
        { symbol: 'M', value: poundFeetOf(line.momentLbIn), unit: 'lb-ft', from: 'sum' },
        { symbol: 'S', value: wood.sectionModulusIn3, unit: 'in3', from: `structure.${id}.rafter-stress` },
      ],
      result: { symbol: 'fb', value: line.stressPsi, unit: 'psi' },
      check: { relation: '<=', limit: line.allowablePsi, pass: line.stressPsi <= line.allowablePsi },
      source: { document: 'ASCE 7', place: 'section 2.4.1', standing: 'secondary' },
    })
  }
}

const plainFactor = (factor: number): string => String(Number(factor.toFixed(4)))

/** Shear, bearing and deflection at their worst places. */
function reportOthers(id: string, result: RafterResult, worksheet: Worksheet): void {
  const says = {
    shear: [
      'Shear of the rafters, the notch at the wall counted',
      "fv = 1.5 V / (b d) <= Fv'; over a notch 1.5 V / (b dn) (d / dn)^2",
    ],
    bearing: ['Bearing of the rafters across the grain', "R / (b lb) <= Fc-perp'"],
    deflection: ['Deflection of the rafters under the variable load alone', 'D <= span / n'],
  } as const
  for (const name of ['shear', 'bearing', 'deflection'] as const) {
    const worst = worstCheck(result.rafters, name)
    if (worst === undefined) continue
    const { rafter, check } = worst
    worksheet.step({
      id: `structure.${id}.rafter-${name}`,
      says: `${says[name][0]}: ${placeOf(id, rafter.number, check.place)}, ${check.combination}`,
      formula: says[name][1],
      inputs:
        name === 'deflection'
          ? [{ symbol: 'limit', value: check.capacity, unit: 'in', from: 'IRC table R301.7, on the horizontal span' }]
          : [
              { symbol: name === 'shear' ? 'V' : 'R', value: check.action, unit: 'lb', from: 'statics' },
              { symbol: 'limit', value: check.capacity, unit: 'psi', from: 'NDS Supplement with its factors' },
            ],
      result: {
        symbol: name === 'shear' ? 'fv' : name === 'bearing' ? 'fc' : 'D',
        value: check.demand,
        unit: check.unit,
      },
      check: { relation: '<=', limit: check.capacity, pass: check.ratio <= 1 },
      source: name === 'deflection' ? IRC('table R301.7') : lumberSource(result.wood?.species ?? ''),
      limits:
        name === 'shear'
          ? 'not reduced near supports'
          : name === 'bearing'
            ? 'Cb 1; the plate is as hard as the rafter'
            : 'along the slope the same rafter deflects 1 / cos more for its span',
    })
  }
}
