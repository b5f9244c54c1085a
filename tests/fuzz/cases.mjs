import { stringify } from 'yaml'
import { ownDoors } from './doors.mjs'
import { Grammar } from './grammar.mjs'
import { mutateData } from './mutate-data.mjs'
import { mutateText } from './mutate.mjs'
import { peoplesDoors } from './peoples-doors.mjs'
import { Chance } from './random.mjs'
import {
  BESIDE,
  EPW,
  EPW_NAME,
  EQUIPMENT,
  ESPI,
  MONEY,
  PRICE_SCHEMA,
  PRODUCTION,
  PROJECT_DATA,
  PROJECTS,
  SCHEMA,
  USE_CSV,
} from './seeds.mjs'
import { KEYS, SCALARS } from './values.mjs'

const grammar = new Grammar(SCHEMA)
const priceGrammar = new Grammar(PRICE_SCHEMA)

/** Kinds of input and how often each is made, in parts. */
const KINDS = [
  [26, projectText],
  [26, projectData],
  [14, grammarProject],
  [8, equipment],
  [3, weather],
  [6, production],
  [3, meterXml],
  [3, meterCsv],
  [8, money],
  [4, prices],
  [4, commandLine],
  [4, fleetTable],
  ...Object.values(ownDoors(withProject)).map((make) => [7, make]),
  ...Object.values(peoplesDoors(withProject)).map((make) => [4, make]),
]

/** Kinds that take three to eight times as long as the others: of years of hours, and of pages of an offer. */
const SLOW = new Set([
  'production',
  'watched',
  'weatherOf',
  'weather',
  'meterCsv',
  'meterXml',
  'money',
  'offer',
  'authority',
])
const LIGHT_SHARE_OF_SLOW = 0.4

/**
 * One input: files to lay in a folder, arguments for the program, and what the library is asked beside it.
 *
 * @param {number} seed
 * @param {number} index
 * @param {{ subcommands: readonly string[], takesResults: readonly string[], light: boolean, kinds?: readonly string[] }} known
 *   Subcommands that take a project, and those with --use; whether the packet is left out and slow kinds are
 *   rarer; kinds of input when not all.
 */
export function makeCase(seed, index, known) {
  const chance = new Chance(seed, index)
  const kinds = known.kinds === undefined ? KINDS : KINDS.filter(([, { name }]) => known.kinds.includes(name))
  const weighed = kinds.map(([parts, make]) => [
    parts * (known.light && SLOW.has(make.name) ? LIGHT_SHARE_OF_SLOW : 1),
    make,
  ])
  let left = chance.next() * weighed.reduce((sum, [parts]) => sum + parts, 0)
  for (const [parts, make] of weighed) {
    if (left < parts) return { kind: make.name, chance, ...make(chance, known) }
    left -= parts
  }
  throw new Error('no kind')
}

function argumentsFor(chance, subcommands, name) {
  // A packet takes as long as thirty other runs.
  const wanted = chance.chance(0.9) ? subcommands.filter((one) => one !== 'draw-permit') : subcommands
  const subcommand = name ?? chance.of(wanted)
  const args = [subcommand, 'project.yaml']
  const form = chance.below(subcommand === 'draw-permit' ? 1 : 6)
  if (form === 1) args.push('--json')
  if (form === 2) args.push('--csv')
  if (form === 3) args.push('--markdown')
  if (form === 4) args.push('--show-work')
  if (subcommand === 'draw-permit') args.push('--draft', '--out', 'out.bin')
  else if (chance.chance(0.1)) args.push('--out', 'out.bin')
  if (chance.chance(0.1)) args.push('--set', override(chance))
  return args
}

function override(chance) {
  const path = [
    'roof_planes.south.azimuth_deg',
    'arrays.south.standoff_in',
    'site.latitude_deg',
    'title',
    'a.b',
    'structure.wind.basic_speed_mph',
    '',
  ]
  return `${chance.of([...path, ...KEYS])}=${chance.of(SCALARS)}`.replaceAll('\0', '')
}

/** The houses as they are, to see whether the damaged ones start from something that works. */
export const SOUND = PROJECTS.map((text) => withProject(text))

/** Only what the project names is written, so that most inputs cost no megabyte. */
function withProject(text, more = {}) {
  const files = { 'project.yaml': text, ...more }
  for (const [name, beside] of Object.entries(BESIDE)) if (text.includes(name)) files[name] ??= beside
  if (text.includes(EPW_NAME) && files[EPW_NAME] === undefined) files[EPW_NAME] = EPW
  return files
}

/** The house without hourly weather three times as often: it is quicker. */
const texts = (chance) => chance.of([PROJECTS[0], PROJECTS[0], PROJECTS[0], PROJECTS[1]])

function projectText(chance, { subcommands }) {
  return { files: withProject(mutateText(chance, texts(chance))), args: argumentsFor(chance, subcommands) }
}

function projectData(chance, { subcommands }) {
  const data = mutateData(chance, chance.of([PROJECT_DATA[0], PROJECT_DATA[0], ...PROJECT_DATA]), PROJECT_DATA)
  const text = chance.chance(0.2) ? JSON.stringify(data) : stringify(data)
  return { files: withProject(text), args: argumentsFor(chance, subcommands) }
}

function grammarProject(chance, { subcommands }) {
  const made = grammar.document(chance)
  // A wholly random one is seldom coherent: most take one or a few parts into a house that is.
  const data = structuredClone(PROJECT_DATA[3])
  if (chance.chance(0.2)) Object.assign(data, made)
  else
    for (let left = chance.few(3); left > 0; left--) {
      const key = chance.of(Object.keys(made))
      data[key] = made[key]
    }
  return { files: withProject(stringify(data)), args: argumentsFor(chance, subcommands) }
}

function equipment(chance, { subcommands }) {
  const text = mutateText(chance, EQUIPMENT)
  return { files: withProject(PROJECTS[0], { 'equipment.yaml': text }), args: argumentsFor(chance, subcommands) }
}

function weather(chance) {
  const lines = EPW.split('\n')
  if (chance.chance(0.3)) lines.splice(8 + chance.below(9000), chance.below(9000))
  // Damages find the head of the file, where they matter most, as often as its 8760 hours.
  const head = lines.slice(0, 10).join('\n')
  const rest = lines.slice(10).join('\n')
  const text = chance.chance(0.5) ? `${mutateText(chance, head)}\n${rest}` : mutateText(chance, `${head}\n${rest}`)
  const command = chance.of(['estimate-yield', 'check-project'])
  return { files: withProject(PROJECTS[1], { [EPW_NAME]: text }), args: argumentsFor(chance, [command]) }
}

function production(chance) {
  const args = ['review-output', 'project.yaml', 'production.csv']
  if (chance.chance(0.3)) args.push('--json')
  if (chance.chance(0.2)) args.push('--unit', chance.of(['kwh', 'wh', 'kw', 'w']))
  if (chance.chance(0.2)) args.push('--meter', chance.of(['interval', 'cumulative']))
  if (chance.chance(0.2)) args.push('--clock', chance.of(['local', 'standard', 'utc']))
  return { files: withProject(PROJECTS[0], { 'production.csv': mutateText(chance, chance.of(PRODUCTION)) }), args }
}

function meterXml(chance, { subcommands }) {
  const data = { ...PROJECT_DATA[2], usage: { green_button: 'meter.xml' } }
  const nested = '<a>'.repeat(chance.of([10, 1000, 30_000]))
  const xml = chance.chance(0.1) ? nested + '</a>'.repeat(nested.length / 3) : mutateText(chance, chance.of(ESPI))
  return {
    files: withProject(stringify(data), { 'meter.xml': xml }),
    args: argumentsFor(chance, subcommands, chance.chance(0.3) ? 'check-project' : undefined),
    library: { xml },
  }
}

function meterCsv(chance, { subcommands }) {
  const mapping = {
    file: 'meter.csv',
    header_line: 1,
    stamp_columns: ['Start'],
    stamp_format: 'YYYY-MM-DD HH:mm',
    stamps_mark: 'beginning',
    clock: 'standard',
    unit: 'kwh',
    interval_min: 60,
    use_column: 'kWh',
    estimated_column: 'Estimated',
  }
  const data = {
    ...PROJECT_DATA[2],
    usage: { interval_csv: chance.chance(0.3) ? mutateData(chance, mapping, [mapping]) : mapping },
  }
  const csv = chance.chance(0.3) ? USE_CSV : mutateText(chance, USE_CSV)
  return {
    files: withProject(stringify(data), { 'meter.csv': csv }),
    args: argumentsFor(chance, subcommands, chance.chance(0.3) ? 'check-project' : undefined),
    library: { money: true },
  }
}

function money(chance, { subcommands }) {
  const part = chance.of(['tariff', 'tariff', 'usage', 'finance', 'incentives'])
  const value = chance.chance(0.5) ? grammar.part(chance, part) : mutateData(chance, MONEY[part], [MONEY, MONEY.tariff])
  const data = { ...PROJECT_DATA[2], [part]: value }
  if (data.finance?.uncertainty?.samples > 500)
    data.finance = { ...data.finance, uncertainty: { ...data.finance.uncertainty, samples: 200 } }
  const wanted = subcommands.filter((name) => ['payback', 'choose-size', 'check-project'].includes(name))
  return { files: withProject(stringify(data)), args: argumentsFor(chance, wanted), library: { money: true } }
}

function prices(chance, { subcommands }) {
  const list = priceGrammar.document(chance)
  list.items = {
    'module.m410': { pack: 'each', usd: 142 },
    'inverter.micro366': { pack: 'each', usd: 120 },
    ...list.items,
  }
  const text = stringify(list)
  const data = {
    ...PROJECT_DATA[2],
    materials: { price_list: 'prices.yaml', ...(chance.chance(0.5) ? grammar.part(chance, 'materials') : {}) },
  }
  if (chance.chance(0.9)) data.materials.price_list = 'prices.yaml'
  const wanted = subcommands.filter((name) => ['price-bom', 'payback', 'check-project'].includes(name))
  return {
    files: withProject(stringify(data), { 'prices.yaml': chance.chance(0.6) ? mutateText(chance, text) : text }),
    args: argumentsFor(chance, wanted),
  }
}

/** Rows of a fleet: sound cells and damaged ones, headings that are paths and that are none. */
function fleetTable(chance) {
  const columns = ['id', 'site.latitude_deg', 'title', 'arrays.south.standoff_in', 'roof_planes.south.azimuth_deg']
  const headings = chance.chance(0.3) ? columns.with(chance.below(columns.length), chance.of(KEYS)) : columns
  const sound = (row) => [`house-${row}`, 40 + row / 10, `House ${row}`, 4, 150 + 10 * row]
  const cell = (value) => {
    const text = String(chance.chance(0.1) ? chance.of(SCALARS) : value).slice(0, 500)
    return /[",\r\n]/u.test(text) || chance.chance(0.1) ? `"${text.replaceAll('"', '""')}"` : text
  }
  const rows = Array.from({ length: chance.below(5) }, (_, row) => sound(row).map(cell).join(','))
  const table = `${[headings.join(','), ...rows].join(chance.chance(0.2) ? '\r\n' : '\n')}\n`
  const args = ['run-fleet', 'project.yaml', '--table', 'table.csv', '--jobs', '1', '--stages']
  args.push(chance.of(['yield', 'yield', 'wire', 'yield,wire', 'yield,mounts', chance.of(KEYS)]))
  const form = chance.of([[], ['--jsonl'], ['--json'], ['--csv'], ['--markdown']])
  args.push(...form)
  if (chance.chance(0.2)) args.push('--junit', 'out.xml')
  if (chance.chance(0.2)) args.push('--out-dir', 'results')
  if (chance.chance(0.1)) args.push('--shard', chance.of(['1/2', '2/2', '0/2', '3/2', 'x']))
  if (chance.chance(0.1)) args.push('--fail-fast')
  return {
    files: withProject(PROJECTS[0], { 'table.csv': chance.chance(0.5) ? mutateText(chance, table) : table }),
    args,
  }
}

/** Nonsense on the command line itself. */
function commandLine(chance, { subcommands }) {
  const words = [
    ...subcommands,
    'list-sites',
    'new-project',
    'explain',
    'help',
    'project.yaml',
    'missing.yaml',
    '--json',
    '--csv',
    '--near',
    '--set',
    '--use',
    '--lat',
    '--lon',
    '--site',
    '--limit',
    '--out',
    'out.bin',
    '--force',
    '--quiet',
    '--no-color',
    '--',
    '-',
    '--version',
    ...KEYS,
    ...SCALARS.filter((one) => one.length < 400),
  ]
  const args = Array.from({ length: 1 + chance.below(6) }, () => chance.of(words).replaceAll('\0', ''))
  // Standard input belongs to the fuzzer, and paths outside the folder to nobody.
  return { files: withProject(PROJECTS[0]), args: args.map((arg) => (arg === '-' || arg.includes('/') ? 'x' : arg)) }
}
