import { LATERAL_INCREASE_LIMIT_PCT, PRESCRIPTIVE_ROOF_DEAD_PSF } from '../../tables/irc/index.js'
import { NONBUILDING_SHARE } from '../../tables/asce7/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { radiansOf, type Percent, type Pounds } from '../../values/index.js'
import type { SiteLoads } from '../loads/index.js'
import { planeAreaFt2, type PartCheck } from '../model/index.js'
import type { SolvedPlane } from '../planes/index.js'
import { flatRoofSnowPsf } from '../snow/index.js'
import { lateralChangePct, shakenWeightLb, snowInWeightPsf } from './lateral-change.js'
import type { SeismicSite } from './seismic-site.js'

/** Growth of the sideways load of the house, percent, with its check; undefined where its weights are not stated. */
export function checkHouse(
  seismic: SeismicSite,
  site: SiteLoads,
  arrayLb: Pounds,
  worksheet: Worksheet,
): { readonly changePct: Percent; readonly part: PartCheck } | undefined {
  const at = 'structure.seismic.weights'
  if (seismic.parts.length === 0) return undefined
  for (const name of seismic.halfStated) {
    worksheet.find({
      severity: 'warning',
      id: 'structure.seismic-weights-incomplete',
      message: `of the ${name} only area or weight is stated, so it is left out of the weight of the house, which is the safe side`,
      where: at,
      fix: 'State both its area and its weight, or neither.',
    })
  }
  const houseLb = shakenWeightLb(seismic.parts)
  const changePct = worksheet.step({
    id: 'structure.seismic-lateral-change',
    says: 'Growth of the sideways load of the house in an earthquake, as the weight that shakes with its roof grows',
    formula: 'change = weight of the array / weight of roof, ceiling and upper half of walls',
    inputs: [
      { symbol: 'array', value: arrayLb, unit: 'lb', from: 'modules, inverters, rails and mounts' },
      ...seismic.parts.map(({ name, areaFt2, psf }) => ({
        symbol: name,
        value: areaFt2 * psf,
        unit: 'lb',
        from: `${at}.${name}_area_ft2, ${name}_psf`,
      })),
      { symbol: 'house', value: houseLb, unit: 'lb', from: 'sum of these' },
      {
        symbol: 'snow in the weight',
        value: snowInWeightPsf(site.edition, flatRoofSnowPsf(site.snow)),
        unit: 'psf',
        from: 'section 12.7.2; left out here, which is the safe side',
      },
    ],
    result: { symbol: 'change', value: lateralChangePct(arrayLb, houseLb), unit: '%' },
    check: {
      relation: '<=',
      limit: LATERAL_INCREASE_LIMIT_PCT,
      pass: lateralChangePct(arrayLb, houseLb) <= LATERAL_INCREASE_LIMIT_PCT,
    },
    source: { document: 'IEBC 2018', place: '503.4', standing: 'read' },
    limits: `adds to all growth since the house was built; from ${100 * NONBUILDING_SHARE[site.edition]} % of the weight of the whole building on the array would be a structure of its own`,
  })
  const part: PartCheck = {
    name: 'house lateral increase',
    demand: changePct,
    capacity: LATERAL_INCREASE_LIMIT_PCT,
    limitIs: 'allowed increase',
    unit: '%',
    where: 'the house',
    source: { document: 'IEBC 2018', place: '503.4', standing: 'read' },
    path: at,
    fix: 'Have a structural engineer check the walls of the house for earthquake with the array.',
  }
  return { changePct, part }
}

/** Roofs of D0 to D2 that are heavier than prescriptive bracing allows. */
export function findHeavyRoof(seismic: SeismicSite, planes: readonly SolvedPlane[], worksheet: Worksheet): void {
  const { category } = seismic
  if (category !== 'D0' && category !== 'D1' && category !== 'D2') return
  for (const { model, framing, arrays } of planes) {
    const areaFt2 = planeAreaFt2(model.geometry)
    const arrayLb = model.modules.reduce(
      (sum, m) => sum + m.widthFt * m.heightFt * (arrays.get(m.array)?.dead.mostPsf ?? 0),
      0,
    )
    const planPsf = (framing.existingDeadPsf + arrayLb / areaFt2) / Math.cos(radiansOf(model.geometry.tiltDeg))
    if (planPsf <= PRESCRIPTIVE_ROOF_DEAD_PSF) continue
    worksheet.find({
      severity: 'warning',
      id: 'structure.seismic-roof-dead',
      message: `plane '${model.geometry.id}': roof and array weigh ${planPsf.toFixed(1)} psf of plan area on average, over the ${PRESCRIPTIVE_ROOF_DEAD_PSF} psf for which walls are braced by the tables of the residential code in ${category}`,
      where: `structure.framing.${model.geometry.id}.existing_dead_psf`,
      source: { document: 'IRC 2018', place: 'R301.2.2', standing: 'from memory' },
      fix: 'Ask the building department whether the bracing was designed for a heavier roof (up to 25 psf with factors), or have an engineer check it.',
    })
  }
}
