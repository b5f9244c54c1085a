// The hourly method against a second, plain implementation of the same published equations, written for this test: its own
// reading of the file, Spencer 1971 for the sun, textbook angles, Perez 1990 and SAND2004-3535 straight from the papers.
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { estimateYield } from '../../src/yield/index.js'

const EPW = new URL('../../examples/weather/USA_WA_Seattle-Tacoma.Intl.AP.727930_TMY3.epw', import.meta.url)
const RAD = Math.PI / 180
const sin = (deg: number): number => Math.sin(deg * RAD)
const cos = (deg: number): number => Math.cos(deg * RAD)

/**
 * F11, F12, F13, F21, F22, F23, each by bin of clearness.
 *
 * Perez, Ineichen, Seals, Michalsky & Stewart 1990, Solar Energy 44:271-289, with the digits of the EnergyPlus Engineering
 * Reference, from memory; keyed by column here, so that a slip in a row of the program's own table shows.
 */
const PEREZ = {
  from: [1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2],
  columns: [
    [-0.0083117, 0.1299457, 0.3296958, 0.5682053, 0.873028, 1.1326077, 1.0601591, 0.677747],
    [0.5877285, 0.6825954, 0.4868735, 0.1874525, -0.3920403, -1.2367284, -1.5999137, -0.3272588],
    [-0.0620636, -0.1513752, -0.2210958, -0.295129, -0.3616149, -0.4118494, -0.3589221, -0.2504286],
    [-0.0596012, -0.0189325, 0.055414, 0.1088631, 0.2255647, 0.2877813, 0.2642124, 0.1561313],
    [0.0721249, 0.065965, -0.0639588, -0.1519229, -0.4620442, -0.8230357, -1.127234, -1.3765031],
    [-0.0220216, -0.0288748, -0.0260542, -0.0139754, 0.0012448, 0.0558651, 0.1310694, 0.2506212],
  ],
} as const

interface Truth {
  readonly poaKwhM2: number[]
  readonly acKwh: number[]
}

/** 1 kW of modules, close roof mount, 97 % inverter of a given rating, no other loss. */
function independent(tilt: number, azimuth: number, acLimitKw: number): Truth {
  const lines = readFileSync(EPW, 'utf8').split(/\r?\n/u)
  const [, , , , , , lat, lon, zone] = (lines[0] as string).split(',').map(Number)
  const poaKwhM2 = Array.from({ length: 12 }, () => 0)
  const acKwh = Array.from({ length: 12 }, () => 0)
  lines.slice(8, 8 + 8760).forEach((line, index) => {
    const field = line.split(',').map(Number)
    const month = (field[1] as number) - 1
    const [ta, ghi, dni, dhi, wind] = [6, 13, 14, 15, 21].map((at) => field[at] as number) as [
      number,
      number,
      number,
      number,
      number,
    ]
    const day = Math.floor(index / 24) + 1
    const b = (2 * Math.PI * (day - 1)) / 365
    const declination =
      (0.006918 -
        0.399912 * Math.cos(b) +
        0.070257 * Math.sin(b) -
        0.006758 * Math.cos(2 * b) +
        0.000907 * Math.sin(2 * b) -
        0.002697 * Math.cos(3 * b) +
        0.00148 * Math.sin(3 * b)) /
      RAD
    const eot =
      229.2 *
      (0.000075 +
        0.001868 * Math.cos(b) -
        0.032077 * Math.sin(b) -
        0.014615 * Math.cos(2 * b) -
        0.04089 * Math.sin(2 * b))
    const e0 =
      1.00011 + 0.034221 * Math.cos(b) + 0.00128 * Math.sin(b) + 0.000719 * Math.cos(2 * b) + 0.000077 * Math.sin(2 * b)
    const solar = (field[3] as number) - 0.5 + ((lon as number) - 15 * (zone as number)) / 15 + eot / 60
    let w = 15 * (solar - 12)
    const ws = Math.acos(-Math.tan((lat as number) * RAD) * Math.tan(declination * RAD)) / RAD
    const [from, to] = [Math.max(w - 7.5, -ws), Math.min(w + 7.5, ws)]
    if (to <= from) return
    w = (from + to) / 2
    const cosZ = Math.max(1e-6, sin(lat as number) * sin(declination) + cos(lat as number) * cos(declination) * cos(w))
    const z = Math.acos(cosZ) / RAD
    // Duffie & Beckman eq. 1.6.2, surface azimuth from south, west positive.
    const g = azimuth - 180
    const cosI =
      sin(declination) * sin(lat as number) * cos(tilt) -
      sin(declination) * cos(lat as number) * sin(tilt) * cos(g) +
      cos(declination) * cos(lat as number) * cos(tilt) * cos(w) +
      cos(declination) * sin(lat as number) * sin(tilt) * cos(g) * cos(w) +
      cos(declination) * sin(tilt) * sin(g) * sin(w)
    const am = 1 / (cosZ + 0.50572 * (96.07995 - z) ** -1.6364)
    let circumsolar = 0
    let rest = 0
    if (dhi > 0) {
      const zr = z * RAD
      const eps = ((dhi + dni) / dhi + 1.041 * zr ** 3) / (1 + 1.041 * zr ** 3)
      const delta = (dhi * am) / (1361.1 * e0)
      const bin = PEREZ.from.filter((bound) => eps >= bound).length
      const [f11 = 0, f12 = 0, f13 = 0, f21 = 0, f22 = 0, f23 = 0] = PEREZ.columns.map((column) => column[bin] ?? 0)
      const f1 = Math.max(0, f11 + f12 * delta + f13 * zr)
      const f2 = f21 + f22 * delta + f23 * zr
      circumsolar = (dhi * f1 * Math.max(0, cosI)) / Math.max(cos(85), cosZ)
      rest = Math.max(0, dhi * (((1 - f1) * (1 + cos(tilt))) / 2 + f2 * sin(tilt)))
    }
    const beam = dni * Math.max(0, cosI)
    const ground = (ghi * 0.2 * (1 - cos(tilt))) / 2
    const poa = beam + circumsolar + rest + ground
    const modifier = (angle: number): number => {
      if (angle >= 90) return 0
      const tau = (theta: number): number => {
        const t = Math.max(theta, 0.001)
        const r = Math.asin(sin(t) / 1.526) / RAD
        const reflect =
          0.5 * ((sin(r - t) / sin(r + t)) ** 2 + (Math.tan((r - t) * RAD) / Math.tan((r + t) * RAD)) ** 2)
        return Math.exp((-4 * 0.002) / cos(r)) * (1 - reflect)
      }
      return tau(angle) / tau(0)
    }
    const effective =
      (beam + circumsolar) * modifier(Math.acos(Math.min(1, Math.max(-1, cosI))) / RAD) +
      rest * modifier(59.7 - 0.1388 * tilt + 0.001497 * tilt ** 2) +
      ground * modifier(90 - 0.5788 * tilt + 0.002693 * tilt ** 2)
    const cell = ta + poa * Math.exp(-2.98 - 0.0471 * wind) + poa / 1000
    const dc = (effective / 1000) * (1 - 0.0035 * (cell - 25))
    poaKwhM2[month] = (poaKwhM2[month] as number) + poa / 1000
    acKwh[month] = (acKwh[month] as number) + Math.min(acLimitKw, Math.max(0, dc) * 0.97)
  })
  return { poaKwhM2, acKwh }
}

function projectOf(tilt: number, azimuth: number, acLimitKw: number): Project {
  return {
    format: 'gablewatt/2',
    title: 'comparison with an independent implementation',
    site: { latitude_deg: 47.46, longitude_deg: -122.31, climate: { epw: 'weather.epw' } },
    roof_planes: { p: { azimuth_deg: azimuth, tilt_deg: tilt } },
    arrays: { a: { roof_plane: 'p', module: 'm', inverter: 'i', modules: 1, mounting: 'near_roof', standoff_in: 4 } },
    equipment: {
      modules: { m: { pmax_w: 1000, pmax_temp_coeff_pct_per_c: -0.35, efficiency_at_200_pct: 100 } },
      inverters: { i: { kind: 'module_level', ac_power_w: acLimitKw * 1000, weighted_efficiency_pct: 97, night_w: 0 } },
    },
    losses: {
      dirt_pct: 0,
      snow_pct: 0,
      unequal_modules_pct: 0,
      dc_cables_pct: 0,
      ac_cables_pct: 0,
      contacts_pct: 0,
      first_weeks_of_light_pct: 0,
      rating_shortfall_pct: 0,
      out_of_order_pct: 0,
    },
  }
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

describe('hourly method against an independent implementation', () => {
  const files = new Map([['weather.epw', readFileSync(EPW, 'utf8')]])
  it.each([
    [0, 180, 2],
    [18, 225, 0.7],
    [34, 180, 2],
    [34, 90, 0.8],
    [60, 270, 2],
    [90, 180, 2],
  ])('tilt %i, azimuth %i, AC limit %f kW', (tilt, azimuth, limit) => {
    const truth = independent(tilt, azimuth, limit)
    const ours = estimateYield(projectOf(tilt, azimuth, limit), files).values
    expect(Math.abs(ours.annual.poa_kwh_m2 / sum(truth.poaKwhM2) - 1)).toBeLessThan(0.003)
    expect(Math.abs(ours.annual.ac_kwh / sum(truth.acKwh) - 1)).toBeLessThan(0.003)
    ours.monthly.forEach((month, index) => {
      const ofMean = (sum(truth.acKwh) / 12) * 0.015
      expect(Math.abs(month.ac_kwh - (truth.acKwh[index] as number))).toBeLessThan(ofMean)
      expect(Math.abs(month.poa_kwh_m2 - (truth.poaKwhM2[index] as number))).toBeLessThan(
        (sum(truth.poaKwhM2) / 12) * 0.015,
      )
    })
  })
})
