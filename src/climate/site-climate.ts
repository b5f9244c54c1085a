import type { Site } from '../project/index.js'
import { SITING_SOURCE } from '../tables/climate/index.js'
import { StageError, type Worksheet } from '../worksheet/index.js'
import { hourlyClimate } from './hourly-climate.js'
import { houseOf } from './house.js'
import { nearbyClimate } from './nearby-climate.js'
import { seriesClimate } from './series/series-climate.js'
import { stationClimate } from './station-climate.js'
import type { Climate } from './types.js'

/**
 * The climate that the project asks for: `nearby` when it says nothing, a station, or an hourly file.
 *
 * @param site The project's site.
 * @param weatherText Text of the file that `weatherFileOf` names; undefined when it names none.
 * @param worksheet Takes sites, defaults and warnings.
 * @throws StageError when no site or file can serve.
 */
export function siteClimate(site: Site, weatherText: string | undefined, worksheet: Worksheet): Climate {
  const house = houseOf(site)
  const choice = site.climate
  if (choice === undefined) {
    worksheet.assume({
      path: 'site.climate',
      value: 'nearby',
      unit: '',
      why: 'the mean of the nearest eight built-in sites scatters less than any one of them',
      source: SITING_SOURCE,
    })
  }
  if (choice === undefined || choice === 'nearby') return nearbyClimate(house, worksheet)
  if ('station' in choice) return stationClimate(choice.station, house, worksheet)
  const path = 'epw' in choice ? 'site.climate.epw' : 'site.climate.file'
  if (weatherText === undefined) {
    throw new StageError(
      path,
      `the weather file ${weatherFileOf(site) ?? ''} was not read`,
      'give its path relative to the project file',
    )
  }
  if ('file' in choice && choice.kind !== 'epw') return seriesClimate(choice, weatherText, house, worksheet)
  return hourlyClimate(weatherText, house, worksheet, choice.clock_shift_h, path)
}

/** Name of the weather file as the project writes it; undefined when it names none. */
export function weatherFileOf({ climate }: Pick<Site, 'climate'>): string | undefined {
  if (typeof climate !== 'object' || 'station' in climate) return undefined
  return 'epw' in climate ? climate.epw : climate.file
}
