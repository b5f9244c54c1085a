// Sets the energy models beside a measured plant. The measurements carry no licence and are not part of this project.
// Usage: npm run compare:measured -- FOLDER   with FOLDER/reunion_roof1_10min.csv (or _hourly.csv), columns as in its header:
// time at the END of the interval (UTC+4), dni_wm2, dhi_wm2, ghi_wm2, tamb_c, wind10m_ms, poa_ne_wm2, inv1_ac_w, inv2_ac_w.
//
// The plant: 21 deg 20 min S, 55 deg 29 min E, crystalline 210 W modules of 2008, slope 9 deg, azimuth 14 deg, over-roof
// mount; inverter 1: 54 modules, inverter 2: 36 modules, 10 kW each. Source of the data: Laboratoire PIMENT, University of
// La Reunion, EU project TwInSolar (openly published by the university).
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import {
  airMass,
  eccentricityFactor,
  perez1990,
  glassLayerModifier,
  planeAxes,
  SOLAR_CONSTANT_W_M2,
  sunPosition,
} from '../../src/sun/index.js'
import { cosDeg, effectiveGroundAngleDeg, effectiveSkyAngleDeg } from '../../src/sun/index.js'
import { cellRiseKPerWM2, modulePowerW } from '../../src/yield/index.js'

const folder = process.argv[2]
if (folder === undefined) {
  console.error('usage: npm run compare:measured -- FOLDER')
  process.exit(2)
}

const LATITUDE = -(21 + 20 / 60)
const LONGITUDE = 55 + 29 / 60
const TILT = 9
const AZIMUTH = 14
const AGE_YEARS = 14
const RADIANS = Math.PI / 180

/** Losses other than temperature, reflection and inverter: dirt 2, mismatch 1, wiring 1.5, connections 0.5, light-induced 1.5, nameplate 0.5 %. */
const KEPT = 0.98 * 0.99 * 0.985 * 0.995 * 0.985 * 0.995 * (1 - 0.005) ** AGE_YEARS
const INVERTER = 0.97
/** The data describe the mount as well ventilated: open rack, glass and polymer. Power coefficient of modules of that age (common practice, no source). */
const MODULE = { pmaxW: 210, powerCoefficientPerK: -0.0045, lowLightSlope: 0 }

function compare(file: string, stepMinutes: number): void {
  const [header, ...lines] = readFileSync(join(folder as string, file), 'utf8')
    .trim()
    .split(/\r?\n/u)
  const names = (header as string).split(',')
  const column = (name: string): number => names.indexOf(name)
  const { normal } = planeAxes(TILT, AZIMUTH)
  const brightness = { disc: 0, dome: 0, horizon: 0 }
  const sums = { poaModel: 0, poaMeasured: 0, ac1Model: 0, ac1: 0, ac2Model: 0, ac2: 0 }
  const days = new Map<string, { model: number; measured: number }>()
  for (const line of lines) {
    const cells = line.split(',')
    const value = (name: string): number => Number(cells[column(name)])
    const end = Date.parse(`${cells[0] as string}:00+04:00`)
    const middle = end - stepMinutes * 30_000
    const { zenithDeg, azimuthDeg } = sunPosition(middle, LATITUDE, LONGITUDE)
    const up = cosDeg(zenithDeg)
    if (up <= 0.01) continue
    const side = Math.sin(zenithDeg * RADIANS)
    const cosIncidence =
      side * Math.sin(azimuthDeg * RADIANS) * normal.east + side * cosDeg(azimuthDeg) * normal.north + up * normal.up
    const dayOfYear = Math.floor((middle - Date.UTC(2022, 0, 1)) / 86_400_000) + 1
    const dni = value('dni_wm2')
    const dhi = value('dhi_wm2')
    perez1990(brightness, {
      dniWM2: dni,
      dhiWM2: dhi,
      extraterrestrialWM2: SOLAR_CONSTANT_W_M2 * eccentricityFactor(dayOfYear),
      airMass: airMass(zenithDeg),
      zenithRad: zenithDeg * RADIANS,
      cosZenith: up,
    })
    const direct = Math.max(0, cosIncidence) * (dni + brightness.disc)
    const sky = Math.max(0, (brightness.dome * (1 + normal.up)) / 2 + brightness.horizon * Math.sin(TILT * RADIANS))
    const ground = ((dni * up + dhi) * 0.2 * (1 - normal.up)) / 2
    const plane = direct + sky + ground
    const works =
      direct * glassLayerModifier(cosIncidence) +
      sky * glassLayerModifier(cosDeg(effectiveSkyAngleDeg(TILT))) +
      ground * glassLayerModifier(cosDeg(effectiveGroundAngleDeg(TILT)))
    const rise = cellRiseKPerWM2({ kind: 'by_mounting', a: -3.56, b: -0.075, deltaC: 3 }, value('wind10m_ms'))
    const cellC = value('tamb_c') + plane * rise
    const module = modulePowerW(MODULE, works, cellC) * KEPT * INVERTER
    const kwh = stepMinutes / 60_000
    sums.poaModel += plane * kwh
    sums.poaMeasured += value('poa_ne_wm2') * kwh
    sums.ac1Model += Math.min(10_000, module * 54) * kwh
    sums.ac2Model += Math.min(10_000, module * 36) * kwh
    sums.ac1 += value('inv1_ac_w') * kwh
    sums.ac2 += value('inv2_ac_w') * kwh
    const day = (cells[0] as string).slice(0, 10)
    const entry = days.get(day) ?? { model: 0, measured: 0 }
    entry.model += Math.min(10_000, module * 54) * kwh
    entry.measured += value('inv1_ac_w') * kwh
    days.set(day, entry)
  }
  const row = (what: string, unit: string, model: number, measured: number): void =>
    console.log(
      `| ${file} | ${what} | ${model.toFixed(1)} ${unit} | ${measured.toFixed(1)} ${unit} | ${(100 * (model / measured - 1)).toFixed(1)} % |`,
    )
  row('light on the plane', 'kWh/m2', sums.poaModel, sums.poaMeasured)
  row('inverter 1, AC', 'kWh', sums.ac1Model, sums.ac1)
  row('inverter 2, AC', 'kWh', sums.ac2Model, sums.ac2)
  const relative = [...days.values()].filter((day) => day.measured > 5).map((day) => day.model / day.measured - 1)
  const mean = relative.reduce((sum, each) => sum + each, 0) / relative.length
  const spread = Math.sqrt(relative.reduce((sum, each) => sum + (each - mean) ** 2, 0) / relative.length)
  console.log(
    `| ${file} | inverter 1, day by day (${relative.length} days) | mean ${(100 * mean).toFixed(1)} % | scatter ${(100 * spread).toFixed(1)} % | |`,
  )
}

console.log('| data | what | modelled | measured | difference |\n|---|---|---|---|---|')
compare('reunion_roof1_10min.csv', 10)
compare('reunion_roof1_hourly.csv', 60)
