import { readdirSync, readFileSync } from 'node:fs'
import { parse } from 'yaml'

const root = new URL('../../', import.meta.url)
const read = (path) => readFileSync(new URL(path, root), 'utf8')

export const EPW_NAME = 'weather/USA_WA_Seattle-Tacoma.Intl.AP.727930_TMY3.epw'
export const EQUIPMENT = read('examples/equipment.yaml')
export const EPW = read(`examples/${EPW_NAME}`)
/** Every other file that a project of examples/ may name, by its name. */
export const BESIDE = Object.fromEntries(
  readdirSync(new URL('examples/', root), { withFileTypes: true })
    .filter((entry) => entry.isFile() && !/\.mjs$|^(?:lark-hollow|harbor-point)\.yaml$/u.test(entry.name))
    .map(({ name }) => [name, read(`examples/${name}`)]),
)
export const ESPI = [
  read('tests/published/fixtures/espi-hourly-32days.xml'),
  read('tests/published/fixtures/espi-hourly-march-dst.xml'),
]
export const SCHEMA = JSON.parse(read('schemas/project.schema.json'))
export const PRICE_SCHEMA = JSON.parse(read('schemas/price-list.schema.json'))

/** Printed bills, a form with what goes into it, and a rate of the database: all invented. */
export const BILLS = read('examples/lark-hollow-bills.csv')
export const FORM = readFileSync(new URL('examples/forms/sampletown-application.pdf', root))
export const MAPPING = read('examples/forms/sampletown-mapping.yaml')
export const RATE = JSON.parse(read('tests/money/rates/samples/time-of-use-net-billing.json'))

/** An invented use, tariff and finance for a project that has none. */
export const MONEY = {
  usage: { monthly_kwh: [910, 760, 720, 640, 610, 780, 1050, 980, 720, 600, 690, 860], load_shape: 'even', year: 2026 },
  tariff: {
    name: 'R-2 (invented)',
    seasons: { summer: { from: '06-01', to: '09-30' }, winter: { from: '10-01', to: '05-31' } },
    energy: {
      summer: { tiers: [{ up_to_kwh_per_day: 16, usd_per_kwh: 0.14 }, { usd_per_kwh: 0.19 }] },
      winter: { usd_per_kwh: 0.12 },
    },
    fixed: { customer: { usd_per_month: 14 } },
    rounding: 'line',
    solar: { net_metering: { settle: 'annual', true_up_month: 12 } },
  },
  incentives: {
    town: { name: 'Rebate (invented)', kind: 'upfront', amount_usd: 500, source: 'invented', checked: '2026-03-02' },
  },
  finance: {
    years: 25,
    discount_rate_pct: 3,
    inflation_pct: 2,
    electricity_escalation_pct: 2,
    degradation_pct_per_year: 0.5,
    installed_cost_usd: 15_000,
    replacements: [{ name: 'inverter', year: 13, usd: 1500 }],
    uncertainty: {
      seed: 7,
      samples: 100,
      yield_sigma_pct: 8,
      weather_sigma_pct: 4,
      escalation_sigma_pct: 1,
      cost_sigma_pct: 5,
    },
  },
}

/** Text of the project files of examples/, and the same with money parts. */
export const PROJECTS = [read('examples/lark-hollow.yaml'), read('examples/harbor-point.yaml')]
export const PROJECT_DATA = [
  ...PROJECTS.map((text) => parse(text)),
  { ...parse(PROJECTS[0]), ...MONEY },
  { ...parse(PROJECTS[0]), equipment: parse(EQUIPMENT), ...MONEY },
]

/** Measured production: ten days by the quarter hour, forty days, and a counter by the hour. */
export const PRODUCTION = [
  rows('Time,kWh', 960, 900_000, (hour) => 0.9 * sunOf(hour)),
  rows(
    'Date,Energy (kWh)',
    40,
    86_400_000,
    (_hour, index) => 22 + 8 * Math.sin(index),
    (stamp) => stamp.slice(0, 10),
  ),
  rows('Time,Meter (Wh)', 240, 3_600_000, (_hour, index) => 5_000_000 + 950 * index),
]

/** A year of the use of a house by the hour. */
export const USE_CSV = rows(
  'Start,kWh,Estimated',
  8760,
  3_600_000,
  (hour) => (0.4 + 0.6 * sunOf(hour + 6)).toFixed(3),
  undefined,
  ',',
)

function rows(head, count, stepMs, value, stampOf = (stamp) => stamp, tail = '') {
  const lines = Array.from({ length: count }, (_, index) => {
    const time = new Date(Date.UTC(2025, 0, 1) + index * stepMs)
    const stamp = time.toISOString().slice(0, 16).replace('T', ' ')
    return `${stampOf(stamp)},${value(time.getUTCHours() + time.getUTCMinutes() / 60, index)}${tail}`
  })
  return `${[head, ...lines].join('\n')}\n`
}

function sunOf(hour) {
  return Math.max(0, Math.sin(((hour - 6) / 12) * Math.PI))
}
