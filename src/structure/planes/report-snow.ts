import type { Source, Worksheet } from '../../worksheet/index.js'
import type { SiteLoads } from '../loads/index.js'
import { flatRoofSnowPsf, isUnbalancedSlope, mostSnowPsf, snowSlopeFactor } from '../snow/index.js'
import type { PlaneModel } from './plane-model.js'

/** Writes the snow of one plane on the worksheet: balanced on the modules, each case, the worst on the modules. */
export function reportSnow(site: SiteLoads, plane: PlaneModel, worksheet: Worksheet): void {
  const asce = (place: string, standing: Source['standing'] = 'secondary'): Source => ({
    document: site.edition,
    place,
    standing,
  })
  const id = `structure.${plane.geometry.id}`
  recordBalanced(site, plane, asce('eq. 7.4-1, 7.3.4'), worksheet)
  for (const finding of plane.snow.findings) worksheet.find(finding)
  if (site.snow.groundPsf <= 0) return
  for (const { kind, snowCase, ...worked } of plane.snow.cases) {
    const slug = snowCase.name.replaceAll(/[^a-z0-9_.]+/giu, '-')
    worksheet.step({
      id: `${id}.snow-case.${kind === 'balanced' ? 'balanced' : slug}`,
      says: worked.says,
      formula: worked.formula,
      inputs: worked.inputs,
      result: { symbol: 'largest p', value: mostSnowPsf(snowCase), unit: 'psf' },
      source: asce(worked.place, worked.standing),
      ...(worked.limits === undefined ? {} : { limits: worked.limits }),
    })
  }
  recordOnModules(plane, asce('chapter 7'), worksheet)
  notePartial(plane, asce('7.5'), worksheet)
}

function recordBalanced(site: SiteLoads, plane: PlaneModel, source: Source, worksheet: Worksheet): void {
  const { snow, edition } = site
  const surface = site.slipperyModules ? 'slippery' : 'other'
  const { tiltDeg, id } = plane.geometry
  worksheet.step({
    id: `structure.${id}.snow`,
    says: `Balanced snow on the modules, on the horizontal (${surface === 'slippery' ? 'slippery glass' : 'as on the bare roof'})`,
    formula: 'ps = larger of Cs pf, the minimum for low slopes and the local minimum',
    inputs: [
      { symbol: 'slope', value: tiltDeg, unit: 'deg', from: `roof_planes.${id}` },
      {
        symbol: 'Cs',
        value: snowSlopeFactor(tiltDeg, { edition, thermalFactor: snow.thermalFactor, surface }),
        unit: '',
        from: 'figure 7.4-1',
      },
      { symbol: 'pf', value: flatRoofSnowPsf(snow), unit: 'psf', from: 'structure.flat-roof-snow' },
      { symbol: 'minimum', value: snow.minimumPsf, unit: 'psf', from: 'structure.snow.roof_minimum_psf' },
    ],
    result: { symbol: 'ps', value: plane.snow.balancedOnModulesPsf, unit: 'psf' },
    source,
  })
}

function recordOnModules(plane: PlaneModel, source: Source, worksheet: Worksheet): void {
  const { cases, onModulesPsf, modulesPsf, modulesCase } = plane.snow
  worksheet.step({
    id: `structure.${plane.geometry.id}.snow-on-modules`,
    says: `Snow for which modules, rails and mounts are checked: ${modulesCase}`,
    formula: 'p = largest of all cases from the lower end of the lowest module to the upper end of the highest',
    inputs: cases.map(({ snowCase }, index) => ({
      symbol: snowCase.name,
      value: onModulesPsf[index] ?? 0,
      unit: 'psf',
      from: `structure.${plane.geometry.id}.snow-case`,
    })),
    result: { symbol: 'p', value: modulesPsf, unit: 'psf' },
    source,
    limits: 'taken for all modules of the plane; at the level of the stated ground snow',
  })
}

/** Why no span pattern of half loads is looked at for the rafters. */
function notePartial({ geometry, snow }: PlaneModel, source: Source, worksheet: Worksheet): void {
  if (snow.cases.some(({ kind }) => kind === 'partial')) return
  const gable = isUnbalancedSlope(geometry.tiltDeg) && snow.cases.some(({ kind }) => kind === 'unbalanced')
  worksheet.note({
    id: `structure.${geometry.id}.snow-partial`,
    says: 'Half of the snow gone from some spans of the rafters is no case of its own',
    formula: gable
      ? 'unbalanced snow covers rafters that run up to the ridge of a gable of 2.38 to 30.2 degrees'
      : 'the rafters have one span',
    inputs: [{ symbol: 'slope', value: geometry.tiltDeg, unit: 'deg', from: `roof_planes.${geometry.id}` }],
    result: { symbol: 'partial load', value: 'not needed', unit: '' },
    source,
    limits: 'rails along the eave are checked with full snow on all of their length',
  })
}
