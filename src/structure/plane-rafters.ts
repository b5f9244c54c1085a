import type { Worksheet } from '../worksheet/index.js'
import { LOAD_COMBINATIONS } from '../tables/asce7/index.js'
import { ROOF_LIVE_LOAD_PSF } from '../tables/irc/index.js'
import type { PartCheck } from './collect-checks.js'
import type { FramingSpec } from './framing-spec.js'
import { gravityChangePct } from './gravity-change.js'
import type { LaidRail } from './lay-rails.js'
import { planeAreaFt2 } from './plane-geometry.js'
import type { PlaneModel } from './plane-model.js'
import type { ArrayOnPlane } from './plane-rails.js'
import { checkRafters, type RafterPoint } from './rafter-check.js'
import { rafterNumber } from './rafter-grid.js'
import type { SiteLoads } from './site-loads.js'

/** Factor of snow in the gravity combination of the edition. */
function snowFactor(site: SiteLoads): number {
  if (site.snowIsAllowable) return 1
  return LOAD_COMBINATIONS[site.edition].find((c) => c.snow > 0 && c.wind === 0)?.snow ?? 1
}

/** Bending of the worst rafter of one plane as a check, with its step. */
export function rafterPartCheck(
  site: SiteLoads,
  plane: PlaneModel,
  framing: FramingSpec,
  rails: readonly LaidRail[],
  arrays: ReadonlyMap<string, ArrayOnPlane>,
  worksheet: Worksheet,
): PartCheck {
  const id = plane.geometry.id
  const slopeDeg = plane.geometry.tiltDeg
  const cos = Math.cos((slopeDeg * Math.PI) / 180)
  const factor = snowFactor(site)
  const points: RafterPoint[] = rails.flatMap((rail) => {
    const dead = arrays.get(rail.loaded.line.array)?.dead.mostPsf ?? 0
    const vertical = dead + factor * plane.snowPsf.modules * cos
    return rail.demand.mounts.map((mount) => ({
      rafter: rafterNumber(framing, mount.xIn),
      yIn: rail.loaded.line.yIn,
      verticalLb: Math.max(0, mount.reactionAreaFt2) * vertical,
    }))
  })
  const arrayDead = Math.max(0, ...[...arrays.values()].map((a) => a.dead.mostPsf))
  const snowPsf = factor * plane.snowPsf.roof
  const coveredIn = (rafter: number) => {
    const xFt = (framing.firstOffsetIn + (rafter - 1) * framing.spacingIn) / 12
    return plane.modules
      .filter((m) => m.xFt <= xFt && xFt <= m.xFt + m.widthFt)
      .map((m) => ({ fromIn: m.yFt * 12, toIn: (m.yFt + m.heightFt) * 12 }))
  }
  const result = checkRafters({ framing, slopeDeg, snowPsf, points, coveredIn }, arrayDead)
  const path = `structure.framing.${id}`
  reportGravity(plane, framing, arrayDead, snowPsf, worksheet)
  worksheet.step({
    id: `structure.${id}.rafter-before`,
    says: 'Bending moment of a rafter before the array, roof live load or snow',
    formula: 'M = (D / cos + larger of 20 psf and snow) s L^2 / 8',
    inputs: [
      { symbol: 'D', value: framing.existingDeadPsf, unit: 'psf', from: `${path}.existing_dead_psf` },
      { symbol: 'snow', value: snowPsf, unit: 'psf', from: `structure.${id}.snow` },
      { symbol: 's', value: framing.spacingIn, unit: 'in', from: `${path}.spacing_in` },
      { symbol: 'L', value: framing.spanFt, unit: 'ft', from: `${path}.span_ft` },
    ],
    result: { symbol: 'M', value: result.momentBeforeLbFt, unit: 'lb-ft' },
    source: { document: 'IRC 2018', place: 'table R301.6, roof live load', standing: 'secondary' },
    limits:
      result.notCovered === undefined
        ? `span table: at most ${(result.tableSpanFt ?? 0).toFixed(2)} ft for these rafters (ceiling attached, stricter than without)`
        : `span table not used: ${result.notCovered}`,
  })
  return {
    name: 'rafter bending',
    demand: result.momentLbFt,
    capacity: result.allowedLbFt,
    unit: 'lb-ft',
    where: `${id} rafter ${result.rafter}`,
    source:
      result.basis === 'span table'
        ? { document: 'IBC 2018', place: 'table 2308.7.2(2), twin of IRC 2018 R802.4.1(2)', standing: 'read' }
        : { document: 'IEBC 2021', place: '805.2, gravity load up by at most 5 %', standing: 'secondary' },
    path,
    fix: 'Stagger the mounts or put them closer together so that more rafters share the load; otherwise have a structural engineer check the rafters and state rafters_verified_by.',
    ...(framing.verifiedBy === undefined ? {} : { covered: framing.verifiedBy }),
  }
}

/** Writes the change of the plane's whole gravity load on the worksheet. */
function reportGravity(
  plane: PlaneModel,
  framing: FramingSpec,
  arrayDeadPsf: number,
  snowPsf: number,
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
