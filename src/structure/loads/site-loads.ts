import type { Project } from '../../project/index.js'
import { MAX_GROUND_SNOW_PSF, SNOW_THERMAL, type LoadEdition } from '../../tables/asce7/index.js'
import { StageError } from '../../worksheet/index.js'
import { need } from '../model/index.js'
import type { SnowOnRoof } from '../snow/index.js'
import type { WindExposure } from '../wind/index.js'
import type { Feet } from '../../values/index.js'

/** What the site and the house do to every plane. */
export interface SiteLoads {
  readonly edition: LoadEdition
  readonly wind: WindExposure
  readonly snow: Omit<SnowOnRoof, 'tiltDeg'>
  readonly snowIsAllowable: boolean
  readonly slipperyModules: boolean
  readonly roofKind: 'gable' | 'hip'
  readonly lengthFt: Feet
  /** Least horizontal dimension, ft. */
  readonly widthFt: Feet
  readonly ridgeIsRoofEdge: boolean
}

/** Greatest mean roof height of the method, ft. @source ASCE 7-16 30.1.2 low-rise and 30.3, h <= 60 ft (secondary) */
const MAX_HEIGHT_FT = 60

const ENGINEER = 'Ask a structural engineer for the wind loads, and state their letter in the packet.'
const DEPARTMENT = 'Ask the building department; it is on its list of climatic and geographic design criteria.'

/**
 * Reads wind, snow and house from the project and refuses what the methods do not cover.
 *
 * @throws StageError when a safety input is missing or outside the method.
 */
export function siteLoads(project: Project): SiteLoads {
  const edition = need(project.codes?.loads, 'codes.loads', 'the edition of the load standard', DEPARTMENT)
  const { wind: stated, snow, building } = project.structure ?? {}
  const wind = windOf(stated, edition)
  return {
    edition,
    wind,
    ...sizeOf(building),
    snow: { ...snowOf(snow, edition), exposure: wind.exposure },
    snowIsAllowable: snowIsAllowable(snow?.ground_basis, edition),
    roofKind: need(building?.roof_kind, 'structure.building.roof_kind', 'the kind of roof', 'State gable or hip.'),
    slipperyModules: snow?.slippery_modules ?? false,
    ridgeIsRoofEdge: stated?.ridge_is_roof_edge ?? false,
  }
}

type Structure = NonNullable<Project['structure']>
type Snow = NonNullable<Structure['snow']>

function windOf(wind: Structure['wind'], edition: LoadEdition): WindExposure {
  const at = 'structure.wind'
  const speedMph = need(wind?.basic_speed_mph, `${at}.basic_speed_mph`, 'the basic wind speed', DEPARTMENT)
  const exposure = need(
    wind?.exposure,
    `${at}.exposure`,
    'the exposure category',
    'B among houses or trees, C in open country, D by open water; the building department decides.',
  )
  const meanRoofHeightFt = need(
    wind?.mean_roof_height_ft,
    `${at}.mean_roof_height_ft`,
    'the mean roof height',
    'Measure eave and ridge height above ground and take the mean.',
  )
  refuseWindOutside(wind, meanRoofHeightFt)
  return {
    edition,
    speedMph,
    exposure,
    meanRoofHeightFt,
    groundElevationFt: wind?.ground_elevation_ft ?? 0,
    keepExposureBFloor: wind?.keep_exposure_b_floor ?? false,
  }
}

/** Hills, special wind regions and high houses, which the wind method leaves out. */
function refuseWindOutside(wind: Structure['wind'], meanRoofHeightFt: Feet): void {
  const at = 'structure.wind'
  refuse(
    need(
      wind?.hill_or_escarpment,
      `${at}.hill_or_escarpment`,
      'whether the house stands on a hill, ridge or escarpment',
      'State false on level or gently rolling ground, true on the upper half of an isolated hill, ridge or bluff.',
    ),
    `${at}.hill_or_escarpment`,
    'wind speeds up over a hill, ridge or escarpment, which this method leaves out',
  )
  refuse(
    need(
      wind?.special_wind_region,
      `${at}.special_wind_region`,
      'whether the place is in a special wind region',
      'Look at the wind map of the adopted standard or ask the building department.',
    ),
    `${at}.special_wind_region`,
    'in a special wind region the local records decide, not the map',
  )
  refuse(
    meanRoofHeightFt > MAX_HEIGHT_FT,
    `${at}.mean_roof_height_ft`,
    `a mean roof height of ${meanRoofHeightFt} ft is over the ${MAX_HEIGHT_FT} ft of this method`,
  )
}

/** Size in plan of a house that is enclosed. */
function sizeOf(building: Structure['building']): Pick<SiteLoads, 'lengthFt' | 'widthFt'> {
  refuse(
    need(
      building?.enclosure,
      'structure.building.enclosure',
      'whether the building is enclosed',
      'A house with doors and windows is enclosed.',
    ) !== 'enclosed',
    'structure.building.enclosure',
    'only enclosed buildings are covered',
  )
  const plan = 'Measure the house in plan, walls only.'
  const widthFt = need(building?.width_ft, 'structure.building.width_ft', 'the width of the house', plan)
  const lengthFt = need(building?.length_ft, 'structure.building.length_ft', 'the length of the house', plan)
  return { lengthFt: Math.max(lengthFt, widthFt), widthFt: Math.min(lengthFt, widthFt) }
}

function refuse(outside: boolean, where: string, reason: string): void {
  if (outside) throw new StageError(where, `outside the method: ${reason}`, ENGINEER)
}

function snowOf(snow: Snow | undefined, edition: LoadEdition): Omit<SnowOnRoof, 'tiltDeg' | 'exposure'> {
  const at = 'structure.snow'
  const groundPsf = need(
    snow?.ground_psf,
    `${at}.ground_psf`,
    'the ground snow load',
    `${DEPARTMENT} State 0 where none is set.`,
  )
  if (groundPsf > MAX_GROUND_SNOW_PSF) {
    throw new StageError(
      `${at}.ground_psf`,
      `outside the method: a ground snow load of ${groundPsf} psf is over the ${MAX_GROUND_SNOW_PSF} psf of prescriptive design`,
      'Ask a structural engineer.',
    )
  }
  const roofExposure = need(
    snow?.roof_exposure,
    `${at}.roof_exposure`,
    'the exposure of the roof to wind that takes snow away',
    'partially_exposed for most houses; sheltered among tall conifers; fully_exposed when nothing shelters it.',
  )
  return {
    groundPsf,
    roofExposure,
    thermalFactor: thermalFactor(snow, edition),
    minimumPsf: snow?.roof_minimum_psf ?? 0,
  }
}

function thermalFactor(snow: Snow | undefined, edition: LoadEdition): number {
  if (snow?.thermal_factor !== undefined) return snow.thermal_factor
  if (edition === 'ASCE 7-22') {
    return need<number>(
      undefined,
      'structure.snow.thermal_factor',
      'the thermal factor Ct, whose table is new in 7-22 and not held here,',
      'Read it from ASCE 7-22 table 7.3-2, or ask the building department.',
    )
  }
  return SNOW_THERMAL[
    need(
      snow?.thermal,
      'structure.snow.thermal',
      'the warmth under the roof',
      'cold_ventilated for a ventilated attic with R 25 or more, heated for an insulated slope above rooms, unheated for a garage.',
    )
  ]
}

function snowIsAllowable(basis: Snow['ground_basis'], edition: LoadEdition): boolean {
  if (edition !== 'ASCE 7-22') {
    if (basis !== 'strength') return true
    throw new StageError(
      'structure.snow.ground_basis',
      `${edition} works with allowable ground snow, and this one is at strength level`,
      'Ask the building department for the ground snow load that belongs to the adopted edition.',
    )
  }
  const stated = need(
    basis,
    'structure.snow.ground_basis',
    'whether the ground snow load is allowable or strength level',
    'The maps of 7-22 are strength level; some residential codes print allowable values. Ask the building department.',
  )
  return stated === 'allowable'
}
