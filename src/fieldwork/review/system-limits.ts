import type { Project } from '../../project/index.js'
import { ratedAcKw } from '../../roof/index.js'
import type { YieldRun } from '../../yield/index.js'
import type { ProductionLimits } from '../production/index.js'
import { dayModel, KIND_COUNT } from './day-model.js'
import { MS_PER_DAY, MS_PER_HOUR, calendarDay, dayNumber } from '../../values/index.js'

/** Meters and inverters may run this far over the rating. */
const OVER_RATING = 1.15
/** A day above this multiple of the month's clearest kind of day cannot be. */
const OVER_CLEAR_DAY = 1.6

/** What the reader of measured production must know of the system. */
export function productionLimits(project: Project, run: YieldRun): ProductionLimits {
  const model = dayModel(run)
  const powerKw = OVER_RATING * Math.min(ratedAcKw(project), run.result.values.rated_kw)
  return {
    moduleIds: Object.values(run.result.values.arrays).flatMap((array) => array.by_module.map((module) => module.id)),
    utcOffsetH: project.site.utc_offset_h ?? run.climate.utcOffsetH,
    mostKwh: (startMs, endMs) => {
      const byPower = (powerKw * (endMs - startMs)) / MS_PER_HOUR
      if (endMs - startMs < MS_PER_DAY) return byPower
      const { month } = calendarDay(dayNumber(startMs))
      const clear = [month, (month + 1) % 12].map((each) => model.kindsKwh[each]?.[KIND_COUNT - 1] ?? 0)
      return Math.min(byPower, (OVER_CLEAR_DAY * Math.max(...clear) * (endMs - startMs)) / MS_PER_DAY)
    },
  }
}
