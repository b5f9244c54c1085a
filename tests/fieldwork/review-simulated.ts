import { nearestSnowfall } from '../../src/climate/index.js'
import type { ProductionSeries } from '../../src/fieldwork/production/index.js'
import { collectSigns, type CollectedSigns } from '../../src/fieldwork/review/collect-signs.js'
import { hourModel } from '../../src/fieldwork/review/hour-model.js'
import { judgedDays } from '../../src/fieldwork/review/judge-days.js'
import { dayModel } from '../../src/fieldwork/review/index.js'
import { slowWeatherSpread } from '../../src/fieldwork/review/spread.js'
import type { Plant } from './simulated-year.js'

/** How sure a weather file is, relative. */
const WEATHER_FILE = 0.042

/** Looks for signs in a simulated series as a review does that knows no weather, or the energy that the weather of each day lets expect. */
export function signsOf(
  plant: Plant,
): (series: ProductionSeries, modelled?: ReadonlyMap<number, number>) => CollectedSigns {
  const { project, run } = plant
  const model = dayModel(run)
  const hours = hourModel(run)
  const spread = Math.hypot(plant.method, slowWeatherSpread(run, model, 0.29))
  const { latitude_deg: latitudeDeg, longitude_deg: longitudeDeg, utc_offset_h: utcOffsetH = 0 } = project.site
  const place = { latitudeDeg, longitudeDeg, utcOffsetH }
  return (series, modelled) => {
    const sums = new Map<number, number>()
    for (const { startMs, kwh } of series.spans) {
      const day = Math.floor(startMs / 86_400_000)
      sums.set(day, (sums.get(day) ?? 0) + kwh)
    }
    const periods = [...sums].map(([firstDay, kwh]) => ({ firstDay, days: 1, kwh, moduleKwh: [] }))
    const days = judgedDays(periods, model, modelled)
    return collectSigns({
      series,
      days,
      model,
      hours,
      place,
      parts: { modules: 16, parts: [] },
      snowIn: nearestSnowfall({ latitudeDeg, longitudeDeg })?.monthlyIn,
      correlation: 0.29,
      // A weather file of the very days is known to 4.2 % (the estimate's term), and no year lies off its own weather.
      lasting: modelled === undefined ? spread : Math.hypot(plant.method, WEATHER_FILE),
      statedAgeingPct: 0.5,
    })
  }
}
