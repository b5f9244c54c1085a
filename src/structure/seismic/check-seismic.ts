import type { Project } from '../../project/index.js'
import { EARTHQUAKE_COMBINATIONS, EXEMPT_BELOW_SS_G } from '../../tables/asce7/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { Pounds } from '../../values/index.js'
import type { SiteLoads } from '../loads/index.js'
import type { PartCheck, SeismicValues } from '../model/index.js'
import type { RailKit, SolvedPlane } from '../planes/index.js'
import { checkHouse, findHeavyRoof } from './check-house.js'
import { componentForce, type ComponentForce } from './component-force.js'
import { contradictsCategory, seismicExemption } from './exemption.js'
import { seismicPartChecks, shakenMounts, type ShakenRow } from './mount-checks.js'
import { seismicSite, type SeismicSite } from './seismic-site.js'

/** The array as it is laid out. */
export interface ShakenArray {
  readonly project: Project
  readonly site: SiteLoads
  readonly planes: readonly SolvedPlane[]
  readonly kit: RailKit
  readonly weightLb: Pounds
}

/** What an earthquake does: values, and checks of mounts and house. */
export interface SeismicCheck {
  readonly values: SeismicValues
  readonly parts: readonly PartCheck[]
}

/**
 * Checks array and house for earthquake, or says why that is not asked for or cannot be done.
 *
 * @source ASCE 7 chapter 13 by edition, IEBC 2018 503.4 (secondary)
 * @limits Arrays attached to the roof, importance 1.0; ballasted arrays are outside.
 */
export function checkSeismic(array: ShakenArray, worksheet: Worksheet): SeismicCheck {
  const { site } = array
  const seismic = seismicSite(array.project, site.edition)
  const house = checkHouse(seismic, site, array.weightLb, worksheet)
  const lateral = {
    lateral_change_pct: house?.changePct ?? null,
    lateral_passes: house === undefined ? null : house.part.demand <= house.part.capacity,
  }
  const houseParts = house === undefined ? [] : [house.part]
  const none = { fp_per_weight: null, fp_lb: null, per_mount_lb: null }
  const sds = { sds_g: seismic.sdsG ?? null }
  findContradiction(seismic, worksheet)
  const exempt = seismicExemption(seismic)
  if (exempt !== undefined) {
    noteExempt(site, seismic, exempt, worksheet)
    const force = seismic.sdsG === undefined ? none : forceValues(array, forceOf(site, seismic, seismic.sdsG))
    return { values: { status: 'exempt', reason: exempt, ...sds, ...none, ...force, ...lateral }, parts: houseParts }
  }
  findHeavyRoof(seismic, array.planes, worksheet)
  findUnusedFactors(site, seismic, worksheet)
  if (house === undefined && worthAsking(seismic)) findNoWeights(worksheet)
  if (seismic.sdsG === undefined) {
    const reason = findNotStated(seismic, worksheet)
    return { values: { status: 'not checked', reason, ...sds, ...none, ...lateral }, parts: houseParts }
  }
  const force = forceOf(site, seismic, seismic.sdsG)
  const rows = shakenMounts(site, array.planes, { sdsG: seismic.sdsG, perWeight: force.perWeight })
  recordForce(array, seismic, force, worksheet)
  recordHardest(rows, site, worksheet)
  const acrossLb = seismic.stated.mount_lateral_across_lb
  if (acrossLb === undefined) findNoAcross(worksheet)
  findClamps(array, force, worksheet)
  return {
    values: {
      status: 'checked',
      reason: 'the mounts are checked for the force on the array',
      ...sds,
      ...forceValues(array, force),
      per_mount_lb: Math.max(0, ...rows.map((row) => row.force.horizontalLb)),
      ...lateral,
    },
    parts: [...seismicPartChecks(rows, array.kit, site, acrossLb), ...houseParts],
  }
}

function forceOf(site: SiteLoads, { heightRatio, stated }: SeismicSite, sdsG: number): ComponentForce {
  return componentForce({ edition: site.edition, sdsG, heightRatio, car: stated.car, rpo: stated.rpo })
}

function forceValues(
  { weightLb }: ShakenArray,
  { perWeight }: ComponentForce,
): Pick<SeismicValues, 'fp_per_weight' | 'fp_lb'> {
  return { fp_per_weight: perWeight, fp_lb: perWeight * weightLb }
}

/** Whether anything was said that makes the house worth a question about its weights. */
function worthAsking({ category, ssG, sdsG }: SeismicSite): boolean {
  return category !== undefined || sdsG !== undefined || (ssG ?? 0) >= EXEMPT_BELOW_SS_G
}

function findContradiction(seismic: SeismicSite, worksheet: Worksheet): void {
  if (!contradictsCategory(seismic)) return
  worksheet.find({
    severity: 'warning',
    id: 'structure.seismic-category',
    message: `seismic design category ${seismic.category ?? ''} does not go with SDS ${(seismic.sdsG ?? 0).toFixed(2)} g, which is category D; the array is checked as in category D`,
    where: 'structure.seismic.design_category',
    source: { document: 'ASCE 7-16', place: 'table 11.6-1', standing: 'from memory' },
    fix: 'Ask the building department for both.',
  })
}

/** CAR and Rpo count together, and only in 7-22. */
function findUnusedFactors({ edition }: SiteLoads, { stated }: SeismicSite, worksheet: Worksheet): void {
  const { car, rpo } = stated
  if (car === undefined && rpo === undefined) return
  if (edition === 'ASCE 7-22' && car !== undefined && rpo !== undefined) return
  worksheet.find({
    severity: 'warning',
    id: 'structure.seismic-factors-unused',
    message: `car and rpo are not used: ${edition === 'ASCE 7-22' ? 'one of them is not stated, so the cap of the force is taken' : `${edition} has ap 1.0 and Rp 1.5 instead`}`,
    where: `structure.seismic.${car === undefined ? 'rpo' : 'car'}`,
    source: { document: edition, place: '13.3.1', standing: 'secondary' },
    fix: 'State both with ASCE 7-22, or none.',
  })
}

function noteExempt(site: SiteLoads, { stated }: SeismicSite, reason: string, worksheet: Worksheet): void {
  worksheet.note({
    id: 'structure.seismic-exempt',
    says: `Earthquake on the array is not checked: ${reason}`,
    formula: 'exemptions asked in the order of the standard',
    inputs: [
      { symbol: 'dwelling', value: stated.dwelling ?? 'not stated', unit: '', from: 'structure.seismic.dwelling' },
      {
        symbol: 'category',
        value: stated.design_category ?? 'not stated',
        unit: '',
        from: 'structure.seismic.design_category',
      },
      { symbol: 'Ss', value: stated.ss_g ?? 'not stated', unit: 'g', from: 'structure.seismic.ss_g' },
    ],
    result: { symbol: 'status', value: 'exempt', unit: '' },
    source: { document: site.edition, place: '11.1.2 and 13.1.4', standing: 'secondary' },
  })
}

/** Why the force could not be worked out. */
function findNotStated({ category, ssG }: SeismicSite, worksheet: Worksheet): string {
  const source = { document: 'ASCE 7', place: '11.1.2 and 13.3.1', standing: 'secondary' as const }
  const shakes = category !== undefined || (ssG !== undefined && ssG >= EXEMPT_BELOW_SS_G)
  if (shakes) {
    const where = category === undefined ? `Ss ${ssG} g` : `seismic design category ${category}`
    worksheet.find({
      severity: 'error',
      id: 'structure.seismic-sds-missing',
      message: `earthquake on the array is not checked: ${where} asks for it, and SDS is not stated`,
      where: 'structure.seismic.sds_g',
      source,
      fix: 'State sds_g, or ss_g with fa, from the hazard tool of the standard or the building department.',
    })
    return `${where} asks for a check, and SDS is not stated`
  }
  worksheet.find({
    severity: 'warning',
    id: 'structure.seismic-not-stated',
    message:
      'earthquake on the array is not checked, as neither dwelling with design_category (or ss_g) nor sds_g is stated',
    where: 'structure.seismic',
    source,
    fix: 'State dwelling and the design_category of the building department; in D to F also sds_g.',
  })
  return 'neither category nor shaking is stated'
}

function findNoWeights(worksheet: Worksheet): void {
  worksheet.find({
    severity: 'warning',
    id: 'structure.seismic-weights-not-stated',
    message:
      'whether the sideways load of the house grows by more than 10 % is not checked, as the weights of roof, ceiling and walls are not stated',
    where: 'structure.seismic.weights',
    source: { document: 'IEBC 2018', place: '503.4', standing: 'read' },
    fix: 'State roof_area_ft2 and roof_psf at least; ceiling and walls lower the ratio.',
  })
}

function findNoAcross(worksheet: Worksheet): void {
  worksheet.find({
    severity: 'warning',
    id: 'structure.seismic-across-not-checked',
    message:
      'the strength of the mount itself across the slope is not stated, so an earthquake along the eave is checked on its screws only, where a table gives them',
    where: 'structure.seismic.mount_lateral_across_lb',
    source: { document: 'ASCE 7', place: '13.3.1, any horizontal direction', standing: 'secondary' },
    fix: 'State mount_lateral_across_lb from the sheet or test report of the mount.',
  })
}

/** Along the rail a module is held by friction of its clamps, for which sheets of clamps state no key here. */
function findClamps({ site, planes }: ShakenArray, { perWeight }: ComponentForce, worksheet: Worksheet): void {
  const heaviestLb = Math.max(
    0,
    ...planes.flatMap(({ arrays }) => [...arrays.values()].map(({ dead }) => dead.moduleWeightLb)),
  )
  const pushLb = EARTHQUAKE_COMBINATIONS[site.edition].alone * perWeight * heaviestLb
  worksheet.find({
    severity: 'note',
    id: 'structure.seismic-clamps-not-checked',
    message: `whether the clamps keep a module from sliding along its rails is not checked: ${pushLb.toFixed(0)} lb a module (0.7 E)`,
    where: 'equipment.rails',
    source: { document: site.edition, place: '13.3.1, any horizontal direction', standing: 'secondary' },
    fix: 'Look for the slip load in the sheet or test report of the clamps, and tighten them to their stated torque.',
  })
}

function recordForce(array: ShakenArray, seismic: SeismicSite, force: ComponentForce, worksheet: Worksheet): void {
  const { sdsG = 0, stated } = seismic
  worksheet.step({
    id: 'structure.seismic-force',
    says: 'Horizontal force of an earthquake on the array, strength level, any direction',
    formula: `Fp = (Fp / Wp) Wp; ${force.formula}; at least 0.3 and at most 1.6 SDS Ip`,
    inputs: [
      { symbol: 'SDS', value: sdsG, unit: 'g', from: seismic.sdsFrom },
      {
        symbol: 'z/h',
        value: seismic.heightRatio,
        unit: '',
        from: 'structure.seismic.height_ratio, 1 when not stated',
      },
      ...(stated.car === undefined || stated.rpo === undefined || array.site.edition !== 'ASCE 7-22'
        ? []
        : [
            { symbol: 'CAR', value: stated.car, unit: '', from: 'structure.seismic.car' },
            { symbol: 'Rpo', value: stated.rpo, unit: '', from: 'structure.seismic.rpo' },
          ]),
      { symbol: 'least', value: force.least, unit: '', from: '0.3 SDS Ip' },
      { symbol: 'most', value: force.most, unit: '', from: '1.6 SDS Ip' },
      { symbol: 'Fp / Wp', value: force.perWeight, unit: '', from: 'this step' },
      { symbol: 'Wp', value: array.weightLb, unit: 'lb', from: 'modules, inverters, rails and mounts' },
    ],
    result: { symbol: 'Fp', value: force.perWeight * array.weightLb, unit: 'lb' },
    source: { document: array.site.edition, place: '13.3.1', standing: 'secondary' },
    limits: 'Ip 1.0; snow is no part of Wp; never together with wind',
  })
}

function recordHardest(rows: readonly ShakenRow[], site: SiteLoads, worksheet: Worksheet): void {
  const [first, ...others] = rows
  if (first === undefined) return
  const row = others.reduce((a, b) => (b.force.horizontalLb > a.force.horizontalLb ? b : a), first)
  worksheet.step({
    id: 'structure.seismic-mount',
    says: `Earthquake on the mount that gets most of it, ${row.id}, beside wind`,
    formula: '0.7 Fp of its share of the array; along the slope D + 0.7E or D + 0.525E with snow, 0.2 SDS up or down',
    inputs: [
      { symbol: 'W', value: row.weightLb, unit: 'lb', from: 'area that the rail gives to the mount' },
      { symbol: 'along the slope', value: row.force.alongLb, unit: 'lb', from: 'D sin(slope) + 0.7 Fp cos(slope)' },
      { symbol: 'across the slope', value: row.force.acrossLb, unit: 'lb', from: 'resultant with D sin(slope)' },
      { symbol: 'away from the roof', value: row.force.upliftLb, unit: 'lb', from: '0.7E - 0.6D' },
      { symbol: 'wind, away from the roof', value: row.windUpliftLb, unit: 'lb', from: 'the mount under wind' },
      {
        symbol: 'weight and snow, along the slope',
        value: row.alongLb,
        unit: 'lb',
        from: 'the mount without earthquake',
      },
    ],
    result: { symbol: '0.7 Fp', value: row.force.horizontalLb, unit: 'lb' },
    source: { document: site.edition, place: '2.4.5 and 13.3.1', standing: 'secondary' },
  })
}
