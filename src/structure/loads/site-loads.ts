import type { RoofProject } from '../../project/index.js'
import type { LoadEdition } from '../../tables/asce7/index.js'
import { StageError } from '../../worksheet/index.js'
import { need } from '../model/index.js'
import { siteSnow, type SiteSnow } from './site-snow.js'
import type { WindExposure } from '../wind/index.js'
import type { Feet } from '../../values/index.js'

/** What the site and the house do to every plane. */
export interface SiteLoads {
  readonly edition: LoadEdition
  readonly wind: WindExposure
  readonly snow: SiteSnow['onRoof']
  readonly snowIsAllowable: boolean
  /** What decides how snow may lie besides the balanced case. */
  readonly snowCases: SiteSnow
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
export function siteLoads(project: RoofProject): SiteLoads {
  const edition = need(project.codes?.loads, 'codes.loads', 'the edition of the load standard', DEPARTMENT)
  const { wind: stated, snow, building } = project.structure ?? {}
  const wind = windOf(stated, edition)
  const snowSite = siteSnow(project.structure, edition, wind.exposure)
  return {
    edition,
    wind,
    ...sizeOf(building),
    snow: snowSite.onRoof,
    snowIsAllowable: snowSite.isAllowable,
    snowCases: snowSite,
    roofKind: need(building?.roof_kind, 'structure.building.roof_kind', 'the kind of roof', 'State gable or hip.'),
    slipperyModules: snow?.slippery_modules === true && snowSite.notSlippery === undefined,
    ridgeIsRoofEdge: stated?.ridge_is_roof_edge ?? false,
  }
}

type Structure = NonNullable<RoofProject['structure']>

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
