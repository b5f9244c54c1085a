import { describe, expect, it } from 'vitest'
import {
  blendSites,
  climateRegion,
  DAYS_IN_MONTH,
  distanceKm,
  effectiveDistanceKm,
  isEast,
  monthlyRecord,
  nearbyClimate,
  nearestSite,
  poolSites,
  siteQuality,
  sitingErrorPct,
  weighted,
  type ClimateSite,
  type WeightedSite,
} from '../../src/climate/index.js'
import { Worksheet } from '../../src/worksheet/index.js'

const year = (perDay: readonly number[]): number =>
  perDay.reduce((sum, value, month) => sum + (value * DAYS_IN_MONTH[month]!) / 1000, 0)
const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length)
const sticksOut = (site: ClimateSite): boolean => site.flags.some((flag) => flag.startsWith('ghi_nbr'))

/** The rule once more, from its wording, with the station of the house left out. */
function withoutItself(target: ClimateSite, east: boolean): WeightedSite[] {
  const near = poolSites().flatMap((site) => {
    const km = distanceKm(target.latitudeDeg, target.longitudeDeg, site.latitudeDeg, site.longitudeDeg)
    if (site === target || km > 500 || (east && sticksOut(site))) return []
    return [{ site, distanceKm: km, effectiveKm: Math.hypot(km, 0.2 * (site.elevationM - target.elevationM)) }]
  })
  near.sort((a, b) => a.effectiveKm - b.effectiveKm)
  return weighted(near.slice(0, 8), east)
}

interface LeftOut {
  readonly region: string
  readonly errorPct: number
  readonly nearestKm: number
  /** Yearly share of global irradiation before noon, blended and the station's own; undefined with a wrong clock. */
  readonly morning: readonly [number, number] | undefined
}

/** Errors of the year when each station of the pool outside Alaska is estimated from the others. */
const errors: LeftOut[] = poolSites()
  .filter((site) => site.state !== 'AK')
  .flatMap((target) => {
    const region = climateRegion(target)!
    const used = withoutItself(target, isEast(region))
    if (used.length === 0) return []
    const record = monthlyRecord(target)
    const blend = blendSites(used, target, '')
    const quality = siteQuality(target)
    const share = (months: readonly number[]): number =>
      year(record.ghiWhM2Day.map((value, month) => value * months[month]!)) / year(record.ghiWhM2Day)
    return [
      {
        region,
        errorPct: 100 * (year(blend.ghiWhM2Day) / year(record.ghiWhM2Day) - 1),
        nearestKm: used[0]!.effectiveKm,
        morning:
          quality.clockRight && blend.morning !== undefined
            ? ([share(blend.morning.ghi), share(quality.morningGhi)] as const)
            : undefined,
      },
    ]
  })
const of = (region: string): number[] => errors.filter((one) => one.region === region).map((one) => one.errorPct)

it('x', () => {
  console.log(errors.length, rms(errors.map((e) => e.errorPct)))
  for (const r of ['pacific_coast', 'interior_west', 'interior_east', 'east_gulf_coast', 'islands']) {
    console.log(r, of(r).length, rms(of(r)))
    for (const [a,b] of [[0,20],[20,50],[50,100],[100,9999]] as const) {
      const e = errors.filter((x) => x.region === r && x.nearestKm > a && x.nearestKm <= b).map((x) => x.errorPct)
      console.log('   ', a, e.length, e.length ? rms(e) : '')
    }
    const m = errors.filter((x) => x.region === r && x.morning).map((x) => x.morning![0] - x.morning![1])
    const s = errors.filter((x) => x.region === r && x.morning).map((x) => 0.5 - x.morning![1])
    console.log('   morning', rms(m), rms(s))
  }
  const abs = errors.map((e) => Math.abs(e.errorPct)).sort((a, b) => a - b)
  console.log(abs[Math.floor(abs.length * 0.9)], abs[Math.floor(abs.length * 0.99)], abs.at(-1))
  const m = errors.filter((x) => x.morning).map((x) => x.morning![0] - x.morning![1])
  const s = errors.filter((x) => x.morning).map((x) => 0.5 - x.morning![1])
  console.log('   morning', rms(m), rms(s))
})
