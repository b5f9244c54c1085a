import { DIRECTIONALITY, SNOW_EXPOSURE, VELOCITY_PRESSURE_PLACE, type LoadEdition } from '../../tables/asce7/index.js'
import type { Source, Worksheet } from '../../worksheet/index.js'
import { edgeStripWidthFt, elevationFactor, exposureCoefficient, velocityPressurePsf } from '../wind/index.js'
import type { SiteLoads } from '../loads/index.js'
import { flatRoofSnowPsf } from '../snow/index.js'

/** Writes velocity pressure, edge strip and flat-roof snow on the worksheet. */
export function reportSite(site: SiteLoads, worksheet: Worksheet): void {
  const kz = recordExposure(site, worksheet)
  const ke = recordElevation(site, worksheet)
  recordVelocityPressure(site, kz, ke, worksheet)
  recordEdgeStrip(site, worksheet)
  recordThermal(site, worksheet)
  recordFlatRoofSnow(site, worksheet)
}

function asce(edition: LoadEdition, place: string, standing: Source['standing'] = 'secondary'): Source {
  return { document: edition, place, standing }
}

/** Velocity pressure exposure coefficient. */
function recordExposure({ wind, edition }: SiteLoads, worksheet: Worksheet): number {
  return worksheet.step({
    id: 'structure.kz',
    says: 'Velocity pressure exposure coefficient at the mean roof height',
    formula:
      edition === 'ASCE 7-22'
        ? 'Kz = larger of the 7-16 and 7-22 constants, factor (h / zg)^(2 / alpha)'
        : 'Kz = 2.01 (h / zg)^(2 / alpha), h at least 15 ft',
    inputs: [
      { symbol: 'h', value: wind.meanRoofHeightFt, unit: 'ft', from: 'structure.wind.mean_roof_height_ft' },
      { symbol: 'exposure', value: wind.exposure, unit: '', from: 'structure.wind.exposure' },
    ],
    result: { symbol: 'Kz', value: exposureCoefficient(wind), unit: '' },
    source: asce(
      edition,
      'table of velocity pressure exposure coefficients',
      edition === 'ASCE 7-22' ? 'from memory' : 'secondary',
    ),
    limits:
      edition === 'ASCE 7-10' || wind.keepExposureBFloor
        ? 'exposure B: at least 0.70 below 30 ft'
        : 'exposure B: table value, no floor of 0.70',
  })
}

/** Ground elevation factor. */
function recordElevation({ wind, edition }: SiteLoads, worksheet: Worksheet): number {
  return worksheet.step({
    id: 'structure.ke',
    says: 'Ground elevation factor',
    formula: edition === 'ASCE 7-10' ? 'Ke = 1 (not in 7-10)' : 'Ke = exp(-0.0000362 zg)',
    inputs: [{ symbol: 'zg', value: wind.groundElevationFt, unit: 'ft', from: 'structure.wind.ground_elevation_ft' }],
    result: { symbol: 'Ke', value: elevationFactor(edition, wind.groundElevationFt), unit: '' },
    source: asce(edition, 'table 26.9-1'),
  })
}

function recordVelocityPressure({ wind, edition }: SiteLoads, kz: number, ke: number, worksheet: Worksheet): void {
  worksheet.step({
    id: 'structure.qh',
    says: 'Velocity pressure with the directionality factor, strength level',
    formula: 'qh = 0.00256 Kz Kzt Kd Ke V^2',
    inputs: [
      { symbol: 'Kz', value: kz, unit: '', from: 'structure.kz' },
      { symbol: 'Kzt', value: 1, unit: '', from: 'structure.wind.hill_or_escarpment' },
      { symbol: 'Kd', value: DIRECTIONALITY, unit: '', from: 'table 26.6-1' },
      { symbol: 'Ke', value: ke, unit: '', from: 'structure.ke' },
      { symbol: 'V', value: wind.speedMph, unit: 'mph', from: 'structure.wind.basic_speed_mph' },
    ],
    result: { symbol: 'qh', value: velocityPressurePsf(wind), unit: 'psf' },
    source: asce(edition, VELOCITY_PRESSURE_PLACE[edition]),
  })
}

function recordEdgeStrip({ wind, widthFt, edition }: SiteLoads, worksheet: Worksheet): void {
  worksheet.step({
    id: 'structure.edge-strip',
    says: 'Width of the edge strips of the roof, in plan',
    formula: 'a = larger of (smaller of 0.1 W and 0.4 h), 0.04 W and 3 ft',
    inputs: [
      { symbol: 'W', value: widthFt, unit: 'ft', from: 'structure.building.width_ft' },
      { symbol: 'h', value: wind.meanRoofHeightFt, unit: 'ft', from: 'structure.wind.mean_roof_height_ft' },
    ],
    result: { symbol: 'a', value: edgeStripWidthFt(widthFt, wind.meanRoofHeightFt), unit: 'ft' },
    source: asce(edition, 'figure 30.3-1, notation'),
  })
}

/** Thermal factor of a heated roof by its insulation, in the edition that has a table of it. */
function recordThermal({ snow, snowCases, edition }: SiteLoads, worksheet: Worksheet): void {
  if (snowCases.thermalByR === undefined) return
  worksheet.step({
    id: 'structure.thermal-factor',
    says: 'Thermal factor of a heated roof that is not ventilated',
    formula: 'Ct of table 7.3-3, straight between its columns and rows',
    inputs: [
      { symbol: 'R', value: snowCases.thermalByR, unit: 'h ft2 F/Btu', from: 'structure.snow.roof_insulation_r' },
      {
        symbol: 'pg',
        value: snow.groundPsf * snowCases.mapsOverStated,
        unit: 'psf',
        from: 'structure.snow.ground_psf, at strength level',
      },
    ],
    result: { symbol: 'Ct', value: snow.thermalFactor, unit: '' },
    source: asce(edition, 'table 7.3-3'),
  })
}

function recordFlatRoofSnow({ snow, edition }: SiteLoads, worksheet: Worksheet): void {
  worksheet.step({
    id: 'structure.flat-roof-snow',
    says: 'Snow on a flat roof, Risk Category II',
    formula: 'pf = 0.7 Ce Ct pg',
    inputs: [
      {
        symbol: 'Ce',
        value: SNOW_EXPOSURE[snow.exposure][snow.roofExposure],
        unit: '',
        from: 'structure.snow.roof_exposure',
      },
      { symbol: 'Ct', value: snow.thermalFactor, unit: '', from: 'structure.snow.thermal' },
      { symbol: 'pg', value: snow.groundPsf, unit: 'psf', from: 'structure.snow.ground_psf' },
    ],
    result: { symbol: 'pf', value: flatRoofSnowPsf(snow), unit: 'psf' },
    source: asce(edition, 'eq. 7.3-1'),
    limits: 'at the level of the stated ground snow; how it lies on each plane is in the cases of the plane',
  })
}
