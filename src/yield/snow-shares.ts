import { DAYS_IN_MONTH, nearestSnowfall, type Climate, type NearSnowfall } from '../climate/index.js'
import { SNOWFALL_SOURCE } from '../tables/climate/index.js'
import type { Project } from '../project/index.js'
import type { Worksheet } from '../worksheet/index.js'
import { MONTHS, inchesOf, own, type Celsius, type Inches } from '../values/index.js'
import type { ArrayLight } from './array-light.js'
import { monthlySnowLoss } from './monthly-snow-loss.js'
import { monthlyValues } from './months.js'
import type { SkySteps } from './sky-steps.js'
import { snowCover } from './snow-cover.js'

/** Mean temperature of a month below which snow can be expected, deg C. */
const SNOW_CLIMATE_C = 0
/** Yearly snowfall below which a note will do, in; the errors of the normals are known from this on. */
const LITTLE_SNOW_IN = 5
/** Depth of one snowfall where their number is not stated, in. */
const INCHES_A_SNOWFALL = 3
/** Drop below the modules that stands in when the eave height is not stated, ft. */
const USUAL_DROP_FT = 9

/**
 * Share of light that snow takes from an array, by step; undefined where there is none.
 *
 * In this order: the project's own percentages; the hourly method where the weather file knows the snow depth; the
 * monthly method where the project states snowfall. Where none of these can be used, normals of snowfall at the nearest
 * built-in site are told beside a warning that they are not counted; the monthly method wants the number of snowfalls too.
 */
export function snowShares(
  project: Project,
  climate: Climate,
  steps: SkySteps,
  lit: ArrayLight,
  worksheet: Worksheet,
): Float64Array | undefined {
  const stated = project.losses?.snow_pct
  if (stated !== undefined) {
    const shares = monthlyValues(stated).map((pct) => pct / 100)
    return shares.some((share) => share > 0) ? byMonth(steps, shares) : undefined
  }
  if (climate.kind === 'hourly' && climate.snowDepthCm.some((depth) => depth > 0)) {
    worksheet.assume({
      path: 'losses.snow_pct',
      value: 'hourly method',
      unit: '',
      why: 'the weather file knows the snow depth: snowfalls cover the modules, warmth and sun let it slide',
      source: {
        document: 'Marion, Schaefer, Caine & Sanchez, Solar Energy 97:112-121',
        edition: '2013',
        standing: 'from memory',
      },
    })
    return hourly(climate, steps, lit)
  }
  const meanC = climate.kind === 'hourly' ? monthlyMeans(climate) : climate.meanC
  if (project.site.monthly_snowfall_in !== undefined) return monthly(project, meanC, steps, lit, worksheet)
  const near = nearestSnowfall({ latitudeDeg: project.site.latitude_deg, longitudeDeg: project.site.longitude_deg })
  if (near?.monthlyIn !== undefined) {
    if (near.monthlyIn.some((inches) => inches > 0)) tellSnowfall(near, worksheet)
    return undefined
  }
  if (!coldMonths(meanC)) return undefined
  worksheet.find({
    severity: 'warning',
    id: 'yield.snow-not-counted',
    message: `months of this climate are below ${SNOW_CLIMATE_C} deg C on average, and no snow data are known: snow loss is not in the figures`,
    where: 'losses.snow_pct',
    fix: 'state site.monthly_snowfall_in with site.monthly_snow_events, or losses.snow_pct by month',
  })
  return undefined
}

/** Says how much snow falls, that it is not counted, and how far the figures are to be believed. */
function tellSnowfall(near: NearSnowfall, worksheet: Worksheet): void {
  const { site, distanceKm, monthlyIn = [], yearIn = 0, provisionalMonths } = near
  const months = monthlyIn.flatMap((inches, month) => (inches > 0 ? `${MONTHS[month]} ${inches.toFixed(1)}` : []))
  const provisional = provisionalMonths > 0 ? `, ${provisionalMonths} of 12 months from incomplete records` : ''
  worksheet.find({
    severity: yearIn < LITTLE_SNOW_IN ? 'note' : 'warning',
    id: 'yield.snow-not-counted',
    message: `about ${yearIn.toFixed(1)} in of snow fall in a year (in by month: ${months.join(', ')}; normals at ${site.name}, ${site.state}, ${Math.round(distanceKm)} km away${provisional}), and no loss to it is in the figures: modules under snow give nothing. A neighbour's snowfall is off by 20 % in the median and by 57 to 81 % in one case of ten`,
    where: 'losses.snow_pct',
    source: SNOWFALL_SOURCE,
    fix: 'state site.monthly_snowfall_in with site.monthly_snow_events (snowfalls of an inch or more; the normals do not know their number), or losses.snow_pct by month',
  })
}

function hourly(
  climate: Extract<Climate, { kind: 'hourly' }>,
  steps: SkySteps,
  { plan, planeWM2 }: ArrayLight,
): Float64Array {
  const byRow = new Float64Array(climate.length)
  const rows = steps.fileRow as Uint32Array
  for (let step = 0; step < steps.length; step += 1) {
    byRow[rows[step]!] = planeWM2[step]!
  }
  const cover = snowCover(climate, byRow, plan.tiltDeg, plan.rows)
  return Float64Array.from(rows, (row) => cover[row]!)
}

function monthly(
  project: Project,
  meanC: readonly Celsius[],
  steps: SkySteps,
  { plan, planeWM2 }: ArrayLight,
  worksheet: Worksheet,
): Float64Array {
  const snowfall = project.site.monthly_snowfall_in ?? []
  const events =
    project.site.monthly_snow_events ??
    eventsOf(
      snowfall,
      worksheet.assume({
        path: 'site.monthly_snow_events',
        value: INCHES_A_SNOWFALL,
        unit: 'in a snowfall',
        why: 'the number of snowfalls is not stated: snowfall over this depth, rounded up, for the monthly snow method only',
        source: { document: '', standing: 'common practice, no source' },
      }),
    )
  const array = own(project.arrays, plan.id)
  const plane = array === undefined ? undefined : own(project.roof_planes, array.roof_plane)
  const dropFt =
    plane?.eave_height_ft ??
    worksheet.assume({
      path: `roof_planes.${array?.roof_plane ?? ''}.eave_height_ft`,
      value: USUAL_DROP_FT,
      unit: 'ft',
      why: 'drop below the modules, for the monthly snow method only',
      source: { document: '', standing: 'common practice, no source' },
    })
  worksheet.assume({
    path: 'losses.snow_pct',
    value: 'monthly method',
    unit: '',
    why: 'from site.monthly_snowfall_in, 75 % relative humidity',
    source: { document: 'Townsend & Powers, 37th IEEE PVSC', edition: '2011', standing: 'from memory' },
  })
  const planeKwhM2 = new Float64Array(12)
  for (let step = 0; step < steps.length; step += 1) {
    const month = steps.month[step]!
    const watts = planeWM2[step]!
    planeKwhM2[month] = planeKwhM2[month]! + (watts * steps.hours[step]!) / 1000
  }
  const slantIn = (plan.module.length_in ?? 66) * (plan.rows ?? 1)
  const shares = DAYS_IN_MONTH.map((_, month) => {
    const before = (month + 11) % 12
    return monthlySnowLoss(
      {
        snowfallIn: snowfall[month] ?? 0,
        snowfallBeforeIn: snowfall[before] ?? 0,
        events: events[month] ?? 0,
        eventsBefore: events[before] ?? 0,
        meanC: meanC[month]!,
        planeKwhM2: planeKwhM2[month]!,
      },
      { tiltDeg: plan.tiltDeg, slantIn, dropIn: inchesOf(dropFt) },
    )
  })
  return byMonth(steps, shares)
}

function eventsOf(snowfallIn: readonly Inches[], inchesEach: number): number[] {
  return snowfallIn.map((inches) => Math.ceil(inches / inchesEach))
}

function byMonth(steps: SkySteps, shares: readonly number[]): Float64Array {
  return Float64Array.from(steps.month, (month) => shares[month]!)
}

function coldMonths(meanC: readonly Celsius[]): boolean {
  return meanC.some((celsius) => celsius < SNOW_CLIMATE_C)
}

function monthlyMeans(climate: Extract<Climate, { kind: 'hourly' }>): number[] {
  const sums = Array.from({ length: 12 }, () => ({ sum: 0, hours: 0 }))
  for (let row = 0; row < climate.length; row += 1) {
    const month = sums[climate.month[row]! - 1]
    if (month === undefined) continue
    month.sum += climate.dryBulbC[row]!
    month.hours += 1
  }
  return sums.map(({ sum, hours }) => (hours > 0 ? sum / hours : SNOW_CLIMATE_C))
}
