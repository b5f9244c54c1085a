import { GRAVITY_INCREASE_LIMIT_PCT } from '../../tables/irc/index.js'
import type { Source, Worksheet } from '../../worksheet/index.js'
import { placeOf, worstCheck } from '../rafters/index.js'
import type { RaftersToReport } from './rafters-to-report.js'

/** The rule for existing buildings, apart from strength. */
export function reportCodePath({ id, input, result }: RaftersToReport, worksheet: Worksheet): void {
  const { codePath } = result
  if (codePath === undefined) return
  const path = `structure.framing.${id}`
  const source: Source = {
    document: 'IEBC 2021',
    place: `805.2, gravity load up by at most ${GRAVITY_INCREASE_LIMIT_PCT} %`,
    standing: 'secondary',
  }
  worksheet.step({
    id: `structure.${id}.rafter-before`,
    says: `Bending moment of a rafter before the array, roof live load or snow: ${placeOf(id, codePath.rafter, codePath.place)}`,
    formula: 'M under (D / cos + larger of roof live load and snow) s',
    inputs: [
      { symbol: 'D', value: input.framing.existingDeadPsf, unit: 'psf', from: `${path}.existing_dead_psf` },
      { symbol: 'Lr', value: input.livePsf, unit: 'psf', from: 'roof live load by slope' },
      { symbol: 's', value: input.framing.spacingIn, unit: 'in', from: `${path}.spacing_in` },
    ],
    result: { symbol: 'M', value: codePath.momentBeforeLbFt, unit: 'lb-ft' },
    source: { document: 'IRC 2018', place: 'table R301.6, roof live load', standing: 'secondary' },
  })
  worksheet.step({
    id: `structure.${id}.rafter-ratio`,
    says: 'Bending of that rafter with the array over its bending before; up to 1.05 no more is asked, whatever its strength',
    formula: 'M with array / M before',
    inputs: [
      {
        symbol: 'M with array',
        value: codePath.momentLbFt,
        unit: 'lb-ft',
        from: 'mounts on the rafter as they are laid out',
      },
      { symbol: 'M before', value: codePath.momentBeforeLbFt, unit: 'lb-ft', from: `structure.${id}.rafter-before` },
      { symbol: 'dead load alone', value: codePath.deadChangePct, unit: '%', from: 'change of its moment' },
      ...codePath.combinations.map(({ name, changePct }) => ({
        symbol: name,
        value: changePct,
        unit: '%',
        from: 'change of its moment',
      })),
    ],
    result: { symbol: 'ratio', value: codePath.momentLbFt / codePath.momentBeforeLbFt, unit: '' },
    source,
    limits:
      'compares new with old load and says nothing about strength; engineers read the 5 % as of each load or of all together',
  })
}

/** Where strength fails and the rule for existing buildings would let it pass, both are said. */
export function reportCodeLets({ id, result }: RaftersToReport, worksheet: Worksheet): void {
  const { codePath } = result
  const bending = worstCheck(result.rafters, 'bending')
  if (codePath === undefined || bending === undefined || bending.check.ratio <= 1 || !codePath.passes) return
  worksheet.find({
    severity: 'note',
    id: 'structure.rafter-code-path',
    message: `plane '${id}': the rule for existing buildings lets this pass (bending changes by ${codePath.changePct.toFixed(1)} %, up to ${GRAVITY_INCREASE_LIMIT_PCT} % is allowed), although the rafters do not carry it by the wood standard (${(100 * bending.check.ratio).toFixed(0)} %)${bending.check.isBare ? '; they do not without the array either' : ''}`,
    where: `structure.framing.${id}`,
    source: { document: 'IEBC 2021', place: '805.2', standing: 'secondary' },
    fix: 'An engineer decides; the rule says nothing about strength.',
  })
}
