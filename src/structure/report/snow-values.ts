import type { PlaneSnowValues, SnowValues } from '../model/index.js'
import type { SiteLoads } from '../loads/index.js'
import type { SolvedPlane } from '../planes/index.js'
import { flatRoofSnowPsf, mostSnowPsf, type SnowKind } from '../snow/index.js'

/** Snow on the planes as values of the result. */
export function snowValues(site: SiteLoads, planes: readonly SolvedPlane[]): SnowValues {
  const all = planes.flatMap((plane) => plane.model.snow.cases)
  const worst = (kind: SnowKind): number =>
    Math.max(0, ...all.filter((worked) => worked.kind === kind).map(({ snowCase }) => mostSnowPsf(snowCase)))
  return {
    level: site.snowIsAllowable ? 'allowable' : 'strength',
    ground_psf: site.snow.groundPsf,
    thermal_factor: site.snow.thermalFactor,
    flat_roof_psf: flatRoofSnowPsf(site.snow),
    balanced_psf: worst('balanced'),
    minimum_psf: worst('minimum'),
    unbalanced_psf: worst('unbalanced'),
    drift_psf: worst('drift'),
    sliding_psf: worst('sliding'),
    ice_dam_psf: worst('ice dam'),
    planes: Object.fromEntries(planes.map((plane) => [plane.model.geometry.id, planeSnow(plane)])),
  }
}

function planeSnow({ model }: SolvedPlane): PlaneSnowValues {
  const { cases, onModulesPsf, modulesPsf, modulesCase } = model.snow
  return {
    depth_ft: cases[0]?.snowCase.pieces.at(-1)?.toFt ?? 0,
    modules_psf: modulesPsf,
    modules_case: modulesCase,
    cases: cases.map(({ kind, snowCase }, index) => ({
      name: snowCase.name,
      kind,
      most_psf: mostSnowPsf(snowCase),
      on_modules_psf: onModulesPsf[index] ?? 0,
      pieces: snowCase.pieces.map((piece) => ({
        from_ft: piece.fromFt,
        to_ft: piece.toFt,
        from_psf: piece.fromPsf,
        to_psf: piece.toPsf,
      })),
    })),
  }
}
