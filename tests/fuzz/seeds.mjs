import { readdirSync, readFileSync } from 'node:fs'
import { parse } from 'yaml'

const root = new URL('../../', import.meta.url)
const read = (path) => readFileSync(new URL(path, root), 'utf8')

export const EPW_NAME = 'weather/USA_WA_Seattle-Tacoma.Intl.AP.727930_TMY3.epw'
export const EQUIPMENT = read('examples/equipment.yaml')
export const EPW = read(`examples/${EPW_NAME}`)
/** Every other file that a project of examples/ may name, by its name; documents as bytes. */
export const BESIDE = Object.fromEntries(
  ['', 'papers/']
    .flatMap((folder) =>
      readdirSync(new URL(`examples/${folder}`, root), { withFileTypes: true })
        .filter((entry) => entry.isFile() && !/\.(?:mjs|svg)$|^(?:lark-hollow|harbor-point)\.yaml$/u.test(entry.name))
        .map((entry) => `${folder}${entry.name}`),
    )
    .map((name) => [
      name,
      name.endsWith('.pdf') ? readFileSync(new URL(`examples/${name}`, root)) : read(`examples/${name}`),
    ]),
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
export const AUTHORITY = BESIDE['authority.yaml']
export const PRICES = BESIDE['prices.yaml']
export const RATE = JSON.parse(read('tests/money/rates/samples/time-of-use-net-billing.json'))

/** What an installer or an owner has beside the project: answers, data sheets, serial numbers, readings, comments; all invented. */
export const ANSWERS =
  'place: Denver, CO\nazimuth_deg: 200\npitch_in_12: 6\nmodules: 10\nyear_kwh: 9600\nusd_per_kwh: 0.16\nbus_a: 200\nmain_a: 200\n'
export const COLUMNS =
  'format: gablewatt-equipment-columns/1\nkind: module\nid_column: Id\ncolumns:\n  pmax_w: { column: P }\n  pmax_temp_coeff_pct_per_c: { column: T }\nvalues: { sheet: List 1 (invented) }\n'
export const SHEETS = 'Id,P,T\na,400,-0.3\nb 2,410,-0.34\nm410,415,-0.35\n'
export const SERIALS =
  'kind,unit,serial\nmodule,south.r1c1,A-1\nmodule,south.r1c2,A-2\ninverter,south.r1c1,00012\nother,gateway,"G, 7"\n'
export const READINGS = 'string,voc_v,cell_c,polarity\nmain_s1,315.2,48,right\nmain_s2,,47,\n'
export const COMMENTS =
  "format: gablewatt-comments/1\nreviewer: Plan reviewer (invented)\ndate: '2026-03-20'\ncomments:\n  - { number: '1', comment: Show the vent, answer: Shown, sheet: A-101 }\n  - { number: '2', comment: 'Label, please', answer: Added, sheet: E-601 }\n"

const PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==',
  'base64',
)
const SIGN =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><rect x="1" y="1" width="38" height="18" fill="#1a5" stroke="#000" stroke-width="1"/><path d="M4 16 L20 4 L36 16 Z" fill="#fff" transform="translate(0 1) scale(0.9)"/><g fill="red"><circle cx="10" cy="10" r="3"/></g></svg>\n'
export const LOGOS = [
  ['logo.svg', SIGN],
  ['logo.png', PIXEL],
]

/** A house with strings, whose equipment stands in its own file. */
export const STRING_HOUSE = read('examples/fleet/albuquerque-strings.yaml').replace('equipment.yaml', 'strings.yaml')
export const STRING_EQUIPMENT = read('examples/fleet/equipment.yaml')

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

/** Weather of the days of the first production file: an hourly file of these days, and the table of a station. */
const YEAR = EPW.split('\n').slice(8)
const HOURS = YEAR.slice(0, 24 * 12)
export const WEATHER = [
  [...EPW.split('\n').slice(0, 8), ...YEAR.map((line) => line.replace(/^\d{4}/u, '2025'))].join('\n'),
  [
    'time,ghi,dni,dhi,temp,wind',
    ...HOURS.map((line) => line.split(',')).map((cells) => {
      const [, month, day, hour] = cells.map((cell) => cell.padStart(2, '0'))
      const stamp = `2025-${month}-${day} ${String(Number(hour) - 1).padStart(2, '0')}:00`
      return [stamp, cells[13], cells[14], cells[15], cells[6], cells[21]].join(',')
    }),
    '',
  ].join('\n'),
]
/** How that table is read. */
export const WEATHER_TABLE = {
  stamp_columns: ['time'],
  stamp_format: 'YYYY-MM-DD HH:mm',
  stamps_mark: 'beginning',
  clock: 'standard',
  utc_offset_h: -6,
  header_line: 1,
  columns: {
    global: { column: 'ghi', unit: 'w_m2' },
    direct: { column: 'dni', unit: 'w_m2' },
    diffuse: { column: 'dhi', unit: 'w_m2' },
    air_temperature: { column: 'temp', unit: 'c' },
    wind: { column: 'wind', unit: 'm_s' },
  },
}

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
