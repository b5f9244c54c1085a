import type { Site } from '../project/index.js'
import { SITING_SOURCE } from '../tables/climate/index.js'
import { StageError, type Worksheet } from '../worksheet/index.js'
import { hourlyClimate } from './hourly-climate.js'
import { houseOf } from './house.js'
import { nearbyClimate } from './nearby-climate.js'
import { stationClimate } from './station-climate.js'
import type { Climate } from './types.js'

/**
 * The climate that the project asks for: `nearby` when it says nothing, a station, or an hourly file.
 *
 * @param site The project's site.
 * @param epwText Text of the file that `site.climate.epw` names; undefined when it names none.
 * @param worksheet Takes sites, defaults and warnings.
 * @throws StageError when no site or file can serve.
 */
export function siteClimate(site: Site, epwText: string | undefined, worksheet: Worksheet): Climate {
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
  if (epwText === undefined) {
    throw new StageError(
      'site.climate.epw',
      `the weather file ${choice.epw} was not read`,
      'give its path relative to the project file',
    )
  }
  return hourlyClimate(epwText, house, worksheet)
}
