import { ROOF_LIVE_LOAD_PSF } from '../../tables/irc/index.js'
import { bendingSource } from '../../tables/nds/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import {
  type FramingSpec,
  type RafterIncrease,
  type RafterResult,
  type RafterStress,
  placeOf,
} from '../rafters/index.js'
import { gravityChangePct } from '../loads/index.js'
import { planeAreaFt2 } from '../model/index.js'
import type { PlaneModel } from './plane-model.js'
import type { PoundsPerSquareFoot } from '../../values/index.js'

/** The rafters of one plane after their check. */
export interface CheckedRafters {
  /** Id of the plane. */
  readonly id: string
  readonly framing: FramingSpec
  readonly snowPsf: PoundsPerSquareFoot
  readonly result: RafterResult
  /** Title and date of the document that the rafters stand on, when there is one. */
  readonly covered: string | undefined
}

/** Writes the steps of the rafters of one plane, and warns where their strength could not be checked. */
export function reportRafters(rafters: CheckedRafters, worksheet: Worksheet): void {
  const { id, framing, result, covered } = rafters
  if (result.increase !== undefined) reportBefore(rafters, result.increase, worksheet)
  if (result.stress === undefined) return
  if (result.strength.notStated === undefined) reportStrength(id, framing, result, result.stress, worksheet)
  else reportNotChecked(id, result, result.stress, covered, worksheet)
}

function reportBefore(
  { id, framing, snowPsf, result }: CheckedRafters,
  increase: RafterIncrease,
  worksheet: Worksheet,
): void {
  const path = `structure.framing.${id}`
  const inSpan = increase.place.kind === 'span'
  worksheet.step({
    id: `structure.${id}.rafter-before`,
    says: `Bending moment of a rafter before the array, roof live load or snow: ${placeOf(id, increase.rafter, increase.place)}`,
    formula: inSpan
      ? 'M = (D / cos + larger of 20 psf and snow) s L^2 / 8'
      : 'M of a rafter that runs through, under (D / cos + larger of 20 psf and snow) s',
    inputs: [
      { symbol: 'D', value: framing.existingDeadPsf, unit: 'psf', from: `${path}.existing_dead_psf` },
      { symbol: 'snow', value: snowPsf, unit: 'psf', from: `structure.${id}.snow` },
      { symbol: 's', value: framing.spacingIn, unit: 'in', from: `${path}.spacing_in` },
      ...increase.spansFt.map((spanFt, index) => ({
        symbol: inSpan ? 'L' : `L${index + 1}`,
        value: spanFt,
        unit: 'ft',
        from: `${path}.span_ft`,
      })),
    ],
    result: { symbol: 'M', value: increase.momentBeforeLbFt, unit: 'lb-ft' },
    source: { document: 'IRC 2018', place: 'table R301.6, roof live load', standing: 'secondary' },
    limits:
      result.notCovered === undefined
        ? `span table: at most ${(result.tableSpanFt ?? 0).toFixed(2)} ft for these rafters (ceiling attached, stricter than without)`
        : `span table not used: ${result.notCovered}`,
  })
  worksheet.step({
    id: `structure.${id}.rafter-ratio`,
    says: 'Bending of that rafter with the array over its bending before; up to 1.05 no more is asked, whatever its strength',
    formula: 'M with array / M before',
    inputs: [
      {
        symbol: 'M with array',
        value: increase.momentLbFt,
        unit: 'lb-ft',
        from: 'mounts on the rafter as they are laid out',
      },
      { symbol: 'M before', value: increase.momentBeforeLbFt, unit: 'lb-ft', from: `structure.${id}.rafter-before` },
    ],
    result: { symbol: 'ratio', value: increase.momentLbFt / increase.momentBeforeLbFt, unit: '' },
    source: { document: 'IEBC 2021', place: '805.2, gravity load up by at most 5 %', standing: 'secondary' },
    limits: 'compares new with old load and says nothing about strength',
  })
}

function reportStrength(
  id: string,
  framing: FramingSpec,
  { strength }: RafterResult,
  stress: RafterStress,
  worksheet: Worksheet,
): void {
  const path = `structure.framing.${id}`
  const table = `NDS Supplement, ${strength.species} ${strength.grade}`
  worksheet.step({
    id: `structure.${id}.rafter-strength`,
    says: `Bending strength of the rafters for ${stress.combination}`,
    formula: "Fb' = Fb CD CF Cr CM Ct",
    inputs: [
      { symbol: 'Fb', value: strength.referencePsi, unit: 'psi', from: table },
      { symbol: 'CD', value: stress.loadDuration, unit: '', from: 'table 2.3.2' },
      { symbol: 'CF', value: strength.sizeFactor, unit: '', from: `${path}.nominal_size` },
      { symbol: 'Cr', value: strength.repetitiveFactor, unit: '', from: `${path}.spacing_in` },
      { symbol: 'CM', value: strength.wetFactor, unit: '', from: `${path}.wet_service` },
      { symbol: 'Ct', value: strength.temperatureFactor, unit: '', from: `${path}.sustained_temperature` },
    ],
    result: { symbol: "Fb'", value: stress.allowablePsi, unit: 'psi' },
    source: bendingSource(strength.species),
    limits:
      'current design values; CL 1 (sheathed, ends held); shear, bearing, deflection, thrust, wind and unbalanced snow are not checked',
  })
  worksheet.step({
    id: `structure.${id}.rafter-stress`,
    says: `Bending stress with the array: ${placeOf(id, stress.rafter, stress.place)}`,
    formula: 'fb = M / S, S = b d^2 / 6',
    inputs: [
      {
        symbol: 'M',
        value: stress.momentLbFt,
        unit: 'lb-ft',
        from: `${stress.combination}, mounts as they are laid out`,
      },
      { symbol: 'b', value: framing.breadthIn, unit: 'in', from: `${path}.nominal_size` },
      { symbol: 'd', value: framing.depthIn, unit: 'in', from: `${path}.nominal_size` },
      { symbol: 'S', value: strength.sectionModulusIn3, unit: 'in3', from: 'b and d' },
    ],
    result: { symbol: 'fb', value: stress.stressPsi, unit: 'psi' },
    source: { document: 'Statics of a beam', standing: 'read' },
  })
}

function reportNotChecked(
  id: string,
  { strength }: RafterResult,
  stress: RafterStress,
  covered: string | undefined,
  worksheet: Worksheet,
): void {
  const path = `structure.framing.${id}`
  const percent = ((100 * stress.stressPsi) / stress.allowablePsi).toFixed(0)
  worksheet.find({
    severity: covered === undefined ? 'warning' : 'note',
    id: 'structure.rafter-strength-not-checked',
    message: `plane '${id}': the bending strength of the rafters is not checked, as ${strength.notStated ?? ''}; if they were ${strength.species} ${strength.grade} (Fb ${strength.referencePsi} psi), the lowest usual group, ${percent} % would be used at ${placeOf(id, stress.rafter, stress.place)} (${stress.combination})${covered === undefined ? '' : `; covered by ${covered}`}`,
    where: `${path}.${strength.notStated?.includes('species') === true ? 'species' : 'grade'}`,
    source: bendingSource(strength.species),
    fix: 'Read species and grade from the stamp on a rafter in the attic and state both; lumber of grade No. 3, Stud or Utility is weaker still.',
  })
}

/** Writes the change of the plane's whole gravity load on the worksheet. */
export function reportGravity(
  plane: PlaneModel,
  framing: FramingSpec,
  arrayDeadPsf: PoundsPerSquareFoot,
  snowPsf: PoundsPerSquareFoot,
  worksheet: Worksheet,
): void {
  const roofAreaFt2 = planeAreaFt2(plane.geometry)
  const arrayAreaFt2 = plane.modules.reduce((sum, m) => sum + m.widthFt * m.heightFt, 0)
  const input = {
    roofAreaFt2,
    arrayAreaFt2,
    existingDeadPsf: framing.existingDeadPsf,
    livePsf: ROOF_LIVE_LOAD_PSF,
    snowPsf,
    arrayDeadPsf,
  }
  worksheet.step({
    id: `structure.${plane.geometry.id}.gravity-change`,
    says: 'Change of the gravity load of the plane, live load left out under the modules',
    formula:
      'change = area of array (array + snow - larger of 20 psf and snow) / (area of plane (D + larger of 20 psf and snow))',
    inputs: [
      { symbol: 'area of plane', value: roofAreaFt2, unit: 'ft2', from: `roof_planes.${plane.geometry.id}.outline` },
      { symbol: 'area of array', value: arrayAreaFt2, unit: 'ft2', from: 'arrays' },
      { symbol: 'array', value: arrayDeadPsf, unit: 'psf', from: 'equipment' },
      {
        symbol: 'D',
        value: framing.existingDeadPsf,
        unit: 'psf',
        from: `structure.framing.${plane.geometry.id}.existing_dead_psf`,
      },
      { symbol: 'snow', value: snowPsf, unit: 'psf', from: `structure.${plane.geometry.id}.snow` },
    ],
    result: { symbol: 'change', value: gravityChangePct(input), unit: '%' },
    source: { document: 'IBC 2018', place: '1607.12.5.1', standing: 'secondary' },
    limits: 'for information; the check is the bending of the worst rafter',
  })
}
