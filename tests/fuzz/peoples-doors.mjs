/**
 * Inputs for the doors by which files of people and of other programs come in: patterns of files, printed bills, rates, forms, data sheets,
 * answers, readings, serial numbers, logos, documents.
 */
import { stringify } from 'yaml'
import { BOMBS, damaged, pdfOf } from './hostile-pdf.mjs'
import { mutateData } from './mutate-data.mjs'
import { mutateText } from './mutate.mjs'
import {
  ANSWERS,
  AUTHORITY,
  BESIDE,
  BILLS,
  COLUMNS,
  COMMENTS,
  EQUIPMENT,
  FORM,
  LOGOS,
  MAPPING,
  PRICES,
  PRODUCTION,
  PROJECT_DATA,
  PROJECTS,
  RATE,
  READINGS,
  SERIALS,
  SHEETS,
  STRING_EQUIPMENT,
  STRING_HOUSE,
  WEATHER,
  WEATHER_TABLE,
} from './seeds.mjs'

const FORMS = [[], [], ['--json'], ['--csv'], ['--markdown'], ['--show-work']]

/** A text that is sound in one case of ten. */
const hurt = (chance, text) => (chance.chance(0.1) ? text : mutateText(chance, text))

/** A YAML file that is damaged as text or as data. */
const hurtYaml = (chance, text, data) =>
  chance.chance(0.5) ? hurt(chance, text) : stringify(mutateData(chance, data, PROJECT_DATA))

/** @param withProject Lays a project with the files that it names. */
export function peoplesDoors(withProject) {
  const laid = (more) => withProject(PROJECTS[0], more)
  return {
    glob: (chance) => {
      const pieces = [
        '*',
        '**',
        '?',
        '[a-z]',
        '[',
        ']',
        '{',
        '}',
        ',',
        '{a,b}',
        '{1..9}',
        'p',
        'project',
        '.yaml',
        '/',
        '..',
        '!',
        '\\',
        '(',
        '+',
        '{'.repeat(30),
        '{a,b}'.repeat(12),
        '*'.repeat(40),
        '**/'.repeat(20),
        'é',
        '\u{1F600}',
      ]
      const pattern = Array.from({ length: 1 + chance.below(6) }, () => chance.of(pieces))
        .join('')
        .replace(/^\/+/u, '')
        .replaceAll('..', '.')
      return { files: laid({}), args: ['run-fleet', pattern === '' ? '*' : pattern, '--jobs', '1', '--stages', 'wire'] }
    },
    bills: (chance) => ({
      files: laid({ 'bills.csv': chance.chance(0.1) ? BILLS : mutateText(chance, BILLS) }),
      args: ['check-bill', 'project.yaml', 'bills.csv', ...chance.of([[], ['--json'], ['--csv']])],
    }),
    rates: (chance) => ({
      files: {
        'rate.json': chance.chance(0.5)
          ? hurt(chance, JSON.stringify(RATE))
          : JSON.stringify(mutateData(chance, RATE, [RATE])),
      },
      args: [
        'import-rate',
        'rate.json',
        ...chance.of([[], ['--anyway'], ['--list'], ['--on', '2026-03-02', '--anyway']]),
      ],
    }),
    form: (chance) => {
      const sound = chance.chance(0.3) ? FORM : pdfOf({})
      const bomb = () => BOMBS[chance.of(Object.keys(BOMBS))](0.01)
      const form = chance.chance(0.1) ? bomb() : chance.chance(0.1) ? sound : damaged(1 + chance.below(1e6), sound)
      const mapping = chance.chance(0.5) ? mutateText(chance, MAPPING) : MAPPING
      const args = chance.of([
        ['fill-form', '--list', 'f.pdf'],
        ['fill-form', '--starter', 'f.pdf'],
        ['fill-form', 'project.yaml', 'f.pdf', 'm.yaml', '--preview'],
        ['fill-form', 'project.yaml', 'f.pdf', 'm.yaml', '--out', 'out.bin', ...chance.of([[], ['--flatten']])],
      ])
      return { files: laid({ 'f.pdf': form, 'm.yaml': mapping }), args }
    },
    sheets: (chance) => {
      const file = hurt(chance, EQUIPMENT)
      const more = chance.of([
        [
          '--module',
          'm420',
          '--set',
          `pmax_w=${chance.of([420, -1, 1e300, 'x'])}`,
          '--set',
          'pmax_temp_coeff_pct_per_c=-0.34',
        ],
        ['--table', 'sheets.csv', '--columns', 'columns.yaml'],
        ['--table', 'sheets.csv', '--columns', 'columns.yaml'],
      ])
      return {
        files: {
          'equipment.yaml': file,
          'sheets.csv': hurt(chance, SHEETS),
          'columns.yaml': chance.chance(0.5) ? COLUMNS : hurt(chance, COLUMNS),
        },
        args: [
          'add-equipment',
          '--file',
          'equipment.yaml',
          ...more,
          ...chance.of([[], ['--dry-run'], ['--replace'], ['--replace', '--json']]),
        ],
      }
    },
    listed: (chance) => ({
      files: laid({ 'mine.yaml': hurt(chance, EQUIPMENT) }),
      args: ['list-equipment', 'mine.yaml', ...chance.of([[], ['--fits', 'project.yaml']]), ...chance.of(FORMS)],
    }),
    answers: (chance) =>
      chance.chance(0.6)
        ? {
            files: { 'answers.yaml': hurt(chance, ANSWERS) },
            args: ['new-project', '--answers', 'answers.yaml', ...chance.of([[], ['--out', 'new.yaml']])],
          }
        : {
            files: laid({ 'project.yaml': hurt(chance, PROJECTS[chance.below(2)]) }),
            args: [
              'new-project',
              '--parts',
              chance.of(['wire', 'mounts', 'permit,money', 'yield,storage']),
              '--add-to',
              'project.yaml',
            ],
          },
    weatherOf: (chance) => {
      const table = chance.chance(0.7) ? WEATHER_TABLE : mutateData(chance, WEATHER_TABLE, [WEATHER_TABLE])
      const data = { ...PROJECT_DATA[0], production: { ...PROJECT_DATA[0].production, weather_table: table } }
      return {
        files: laid({
          'project.yaml': stringify(data),
          'production.csv': PRODUCTION[chance.below(2)],
          'weather.csv': hurt(chance, WEATHER[chance.chance(0.2) ? 0 : 1]),
        }),
        args: ['review-output', 'project.yaml', 'production.csv', '--weather', 'weather.csv', ...chance.of(FORMS)],
      }
    },
    watched: (chance) => {
      const table = 'id,project,production\na,project.yaml,a.csv\nb,project.yaml,\nc,no.yaml,\n'
      return {
        files: laid({
          'houses.csv': chance.chance(0.6) ? table : hurt(chance, table),
          'readings/a.csv': hurt(chance, PRODUCTION[1]),
          'readings/b.csv': PRODUCTION[1],
          'readings/project.csv': hurt(chance, PRODUCTION[1]),
        }),
        args: [
          'watch-fleet',
          chance.of(['houses.csv', 'houses.csv', 'project.yaml', '*.yaml']),
          '--production',
          'readings',
          ...chance.of([[], ['--json'], ['--jsonl'], ['--csv'], ['--junit', 'out.xml'], ['--html', 'out.html']]),
        ],
      }
    },
    lists: (chance) => ({
      files: laid({ 'other.yaml': hurt(chance, PRICES) }),
      args: chance.chance(0.5)
        ? ['price-bom', 'project.yaml', '--compare', 'other.yaml', ...chance.of(FORMS)]
        : ['compare-parts', 'project.yaml', '--prices', 'other.yaml', ...chance.of(FORMS)],
    }),
    versus: (chance) => ({
      files: laid({ 'other.yaml': hurt(chance, PROJECTS[0]) }),
      args: [
        ...chance.of([
          ['payback', 'project.yaml'],
          ['payback', 'project.yaml'],
          ['write-proposal', 'project.yaml', '--check'],
        ]),
        '--versus',
        'other.yaml',
        ...chance.of(FORMS),
      ],
    }),
    offer: (chance) => {
      const [name, logo] = chance.of(LOGOS)
      const sign = chance.chance(0.1) ? logo : name.endsWith('.svg') ? mutateText(chance, logo) : turned(chance, logo)
      return {
        files: laid({ [name]: sign }),
        args: [
          'write-proposal',
          'project.yaml',
          '--logo',
          name,
          ...chance.of([['--check'], ['--check'], ['--out', 'out.bin']]),
        ],
      }
    },
    tests: (chance) => ({
      files: laid({
        'serials.csv': hurt(chance, SERIALS),
        'strings.csv': hurt(chance, READINGS),
        'string-house.yaml': STRING_HOUSE,
        'strings.yaml': STRING_EQUIPMENT,
      }),
      args: [
        'write-handover',
        ...chance.of([
          ['project.yaml', '--serials', 'serials.csv'],
          ['string-house.yaml', '--readings', 'strings.csv'],
        ]),
        ...chance.of([['--json'], ['--json'], ['--markdown'], ['--out', 'out.bin']]),
      ],
    }),
    documents: (chance, { light }) => {
      const names = Object.keys(BESIDE).filter((name) => name.endsWith('.pdf'))
      const name = chance.of(names)
      const drawn = !light && chance.chance(0.1)
      return {
        files: laid({ [name]: chance.chance(0.1) ? bombOf(chance) : damaged(1 + chance.below(1e6), BESIDE[name]) }),
        args: drawn
          ? ['draw-permit', 'project.yaml', '--draft', '--out', 'out.bin']
          : ['check-project', 'project.yaml'],
      }
    },
    authority: (chance, { light }) => ({
      files: laid({
        'project.yaml': stringify({
          ...PROJECT_DATA[0],
          permit: { ...PROJECT_DATA[0].permit, authority: 'authority.yaml' },
        }),
        'authority.yaml': hurt(chance, AUTHORITY),
      }),
      args:
        !light && chance.chance(0.1)
          ? ['draw-permit', 'project.yaml', '--audit', ...chance.of(FORMS)]
          : ['check-project', 'project.yaml', ...chance.of(FORMS)],
    }),
    comments: (chance, { light }) => {
      const given = hurtYaml(chance, COMMENTS, COMMENTS_DATA)
      // What is sound draws a whole packet.
      const text = light ? `${given}\nx: [\n` : given
      return {
        files: laid({ 'c.yaml': text }),
        args: ['draw-permit', 'project.yaml', '--draft', '--out', 'out.bin', '--comments', 'c.yaml'],
      }
    },
  }
}

const COMMENTS_DATA = {
  format: 'gablewatt-comments/1',
  comments: [{ number: '1', comment: 'Show the vent', answer: 'Shown', sheet: 'A-101' }],
}

const bombOf = (chance) => BOMBS[chance.of(Object.keys(BOMBS))](0.01)

/** Bytes with one to eight of them changed, or cut off. */
function turned(chance, bytes) {
  const copy = Buffer.from(bytes)
  if (chance.chance(0.2)) return copy.subarray(0, 1 + chance.below(copy.length - 1))
  for (let left = chance.few(8); left > 0; left--) copy[chance.below(copy.length)] = chance.below(256)
  return copy
}
