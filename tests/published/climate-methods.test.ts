import { readFileSync } from 'node:fs'
import { inflateSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import {
  climateSites,
  DAYS_IN_MONTH,
  monthlyFromHourly,
  parseEpw,
  siteQuality,
  type HourlyClimate,
} from '../../src/climate/index.js'
import { SEATTLE_EPW } from '../climate/epw-fixture.js'
import { GROUPS, methodCases, summary } from '../comparisons/method-cases.js'

interface PackedYear {
  readonly name: string
  readonly latitudeDeg: number
  readonly longitudeDeg: number
  readonly utcOffsetH: number
  readonly elevationM: number
  readonly deflated: string
}
const { files } = JSON.parse(readFileSync(new URL('fixtures/typical-years.json', import.meta.url), 'utf8')) as {
  readonly files: Record<string, PackedYear>
}
const HOURS = 8760

function unpacked({ deflated, ...place }: PackedYear): HourlyClimate {
  const bytes = inflateSync(Buffer.from(deflated, 'base64'))
  const column = (index: number, scale: number): Float64Array =>
    Float64Array.from({ length: HOURS }, (_, hour) => {
      const at = 2 * HOURS * index + hour
      return (((bytes[at]! | (bytes[at + HOURS]! << 8)) << 16) >> 16) / scale
    })
  const days = DAYS_IN_MONTH.flatMap((count, month) => Array.from({ length: count }, (_, day) => [month + 1, day + 1]))
  const ofDay = (pick: (day: readonly number[], index: number) => number, hour: number): number =>
    pick(days[Math.floor(hour / 24)]!, Math.floor(hour / 24))
  return {
    kind: 'hourly',
    stepH: 1,
    middleH: Float64Array.from({ length: HOURS }, (_, hour) => (hour % 24) + 0.5),
    ...place,
    length: HOURS,
    month: Uint8Array.from({ length: HOURS }, (_, hour) => ofDay(([month]) => month!, hour)),
    day: Uint8Array.from({ length: HOURS }, (_, hour) => ofDay(([, day]) => day!, hour)),
    hour: Uint8Array.from({ length: HOURS }, (_, hour) => (hour % 24) + 1),
    dayOfYear: Uint16Array.from({ length: HOURS }, (_, hour) => ofDay((__, index) => index + 1, hour)),
    ghiWM2: column(0, 1),
    dniWM2: column(1, 1),
    dhiWM2: column(2, 1),
    dryBulbC: column(3, 10),
    windMs: column(4, 10),
    snowDepthCm: new Float64Array(HOURS).fill(-1),
  }
}

const years: Record<string, HourlyClimate> = {
  727930: parseEpw(SEATTLE_EPW).climate,
  ...Object.fromEntries(Object.entries(files).map(([wmo, packed]) => [wmo, unpacked(packed)])),
}
const cases = Object.entries(years).flatMap(([wmo, climate]) => methodCases(wmo, climate, [1.25]))

describe('the monthly method against the hours of Seattle, Phoenix, Duluth and Houston', () => {
  // Root mean square and largest difference that were asked for before they were measured, percent of the year.
  it.each([
    [GROUPS[0]!.name, 0, 0.9, 3.5],
    [GROUPS[1]!.name, 1, 1.2, 6],
    [GROUPS[3]!.name, 3, 1.6, 6],
  ])('%s', (_, group, rmsPct, largestPct) => {
    const { rms, largest } = summary(cases.filter(GROUPS[group]!.belongs).map((one) => one.difference))
    expect(rms).toBeLessThan(rmsPct)
    expect(largest).toBeLessThan(largestPct)
  })

  it('is at least a quarter nearer than with a symmetric day, in each group', () => {
    for (const { belongs } of GROUPS) {
      const some = cases.filter(belongs)
      const [now, before] = [some.map((one) => one.difference), some.map((one) => one.symmetric)].map(summary)
      expect(now!.rms).toBeLessThan(0.75 * before!.rms)
    }
  })

  it('keeps Seattle within 3 % on every plane', () => {
    const seattle = cases.filter((one) => one.file === '727930')
    expect(seattle).toHaveLength(20)
    expect(summary(seattle.map((one) => one.difference)).largest).toBeLessThan(3)
  })

  it('has the morning shares of the table in the hours themselves', () => {
    for (const [wmo, climate] of Object.entries(years)) {
      const quality = siteQuality(climateSites().find((site) => site.wmo === wmo)!)
      const { morning } = monthlyFromHourly(climate)
      for (let month = 0; month < 12; month++) {
        // Another sun algorithm moves the shares of global light by 0.004 at most; those of diffuse light more.
        expect(Math.abs(morning!.ghi[month]! - quality.morningGhi[month]!)).toBeLessThan(0.004)
        expect(Math.abs(morning!.dhi[month]! - quality.morningDhi[month]!)).toBeLessThan(0.006)
      }
    }
  })
})
