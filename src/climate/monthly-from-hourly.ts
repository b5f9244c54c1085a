import { monthlyExtraterrestrialWhM2Day } from './extraterrestrial.js'
import { morningShares } from './morning-shares.js'
import type { HourlyClimate, MonthlyClimate } from './types.js'

/** Monthly mean days made from a file's own hours, for comparing the two ways of estimating. */
export function monthlyFromHourly(hourly: HourlyClimate): MonthlyClimate {
  const [ghi, dhi, mean, maximum, minimum, wind, days] = [zeros(), zeros(), zeros(), zeros(), zeros(), zeros(), zeros()]
  const rowsPerDay = Math.round(24 / hourly.stepH)
  for (let start = 0; start < hourly.length; start += rowsPerDay) {
    const month = hourly.month[start]! - 1
    let [highest, lowest] = [-Infinity, Infinity]
    for (let row = start; row < start + rowsPerDay; row++) {
      const temperature = hourly.dryBulbC[row]!
      if (temperature > highest) highest = temperature
      if (temperature < lowest) lowest = temperature
      ghi[month]! += hourly.ghiWM2[row]! * hourly.stepH
      dhi[month]! += hourly.dhiWM2[row]! * hourly.stepH
      mean[month]! += temperature / rowsPerDay
      wind[month]! += hourly.windMs[row]! / rowsPerDay
    }
    maximum[month]! += highest
    minimum[month]! += lowest
    days[month]! += 1
  }
  const perDay = (sums: readonly number[]): number[] => sums.map((sum, month) => sum / days[month]!)
  const ghiWhM2Day = perDay(ghi)
  const extraterrestrial = monthlyExtraterrestrialWhM2Day(hourly.latitudeDeg)
  return {
    kind: 'monthly',
    name: `monthly means of ${hourly.name}`,
    latitudeDeg: hourly.latitudeDeg,
    longitudeDeg: hourly.longitudeDeg,
    elevationM: hourly.elevationM,
    utcOffsetH: hourly.utcOffsetH,
    ghiWhM2Day,
    dhiWhM2Day: perDay(dhi),
    clearness: ghiWhM2Day.map((value, month) => (extraterrestrial[month]! > 0 ? value / extraterrestrial[month]! : 0)),
    meanC: perDay(mean),
    meanMaxC: perDay(maximum),
    meanMinC: perDay(minimum),
    windMs: perDay(wind),
    spreadRel: 0,
    leftOutRel: 0,
    sitingErrorRel: 0,
    morning: morningShares(hourly),
    sites: [],
  }
}

function zeros(): number[] {
  return Array.from({ length: 12 }, () => 0)
}
