import { beforeAll, describe, expect, test } from 'vitest'
import { run as planRun } from '../../src/cli/commands/plan-work.js'
import type { CommandContext } from '../../src/cli/subcommand.js'
import {
  drawPacket,
  flattenSheet,
  labelsToAsk,
  requiredLabels,
  type Mark,
  type RequiredLabel,
} from '../../src/drawings/index.js'
import { CAP_HEIGHT } from '../../src/drawings/model/index.js'
import type { WorkPlanValues } from '../../src/fieldwork/index.js'
import { priceBom, readPriceList, type BomValues } from '../../src/materials/index.js'
import type { LoadedProject, Project } from '../../src/project/index.js'
import { editions, type Edition } from '../../src/tables/nec/index.js'
import { readFixture } from '../electrical/read-fixture.js'
import { microHouse, noCombiner, packetInput, stringHouse } from './demo-packet.js'

/** Words, letters and colours by edition: a copy of the published table, not the program's own. */
const published = readFixture('label-words')
const inchesOf: Readonly<Record<string, number>> = { '3/8': 3 / 8, '3/16': 3 / 16, '1/2': 1 / 2 }

/** One label of one house in one edition, wherever a person meets it. */
interface Seen {
  readonly label: RequiredLabel
  readonly row: Record<string, string> | undefined
  readonly drawn: Drawn
  readonly bill: BomValues['lines'][number] | undefined
  readonly plan: string
}

type Drawn = { readonly text: string; readonly letters: readonly Letter[]; readonly notes: string }
interface Letter {
  readonly text: string
  readonly capsIn: number
  readonly ink: string
  readonly ground: string
}

type TextMark = Extract<Mark, { kind: 'text' }>
type Ground = Extract<Mark, { kind: 'rectangle' }>

/** Text of the label sheets: the labels, which are bold, with the ground they stand on, and the notes. */
function drawnLabels(input: ReturnType<typeof packetInput>): Drawn {
  const marks = drawPacket(input)
    .filter((sheet) => sheet.id.startsWith('E-604'))
    .flatMap((sheet) => flattenSheet(sheet).marks.map((mark) => ({ mark, sheet: sheet.id })))
  const texts = marks.filter((each): each is { mark: TextMark; sheet: string } => each.mark.kind === 'text')
  const grounds = marks.filter(
    (each): each is { mark: Ground; sheet: string } => each.mark.kind === 'rectangle' && each.mark.fill !== undefined,
  )
  const letters = texts
    .filter(({ mark }) => mark.face === 'bold')
    .map(({ mark, sheet }): Letter => {
      const under = grounds.findLast(
        ({ mark: box, sheet: on }) =>
          on === sheet &&
          mark.at.x >= box.x &&
          mark.at.x <= box.x + box.width &&
          mark.at.y >= box.y &&
          mark.at.y <= box.y + box.height,
      )
      return {
        text: mark.text,
        capsIn: (mark.sizePt * CAP_HEIGHT) / 72,
        ink: mark.color,
        ground: under?.mark.fill ?? '',
      }
    })
  const notes = texts.filter(({ mark }) => mark.face === 'plain').map(({ mark }) => mark.text)
  return { text: letters.map((each) => each.text).join(' '), letters, notes: flat(notes.join(' ')) }
}

const flat = (text: string): string => text.replaceAll(/\s+/gu, ' ').trim()

/** Lines in a row whose joined text is the phrase. */
function linesOf(drawn: Drawn, phrase: string): readonly Letter[] | undefined {
  const words = flat(phrase)
  for (let from = 0; from < drawn.letters.length; from++) {
    let text = ''
    for (let to = from; to < drawn.letters.length && text.length < words.length; to++) {
      text = flat(`${text} ${drawn.letters[to]?.text ?? ''}`)
      if (text === words) return drawn.letters.slice(from, to + 1)
    }
  }
  return undefined
}

function contextOf(project: Project): CommandContext {
  const loaded = { project, files: new Map(), digest: '', warnings: [] } as unknown as LoadedProject
  return {
    args: ['house.yaml'],
    tool: 'gablewatt 0.0.0',
    project: async () => await Promise.resolve(loaded),
    earlier: async () => await Promise.resolve(undefined),
    subcommands: [],
    progress: () => undefined,
  }
}

async function see(base: Project, edition: Edition): Promise<Seen[]> {
  const project = { ...base, codes: { ...base.codes, electrical: edition } }
  const input = packetInput(project, '11x17', true)
  if (input.wire === undefined) throw new Error('no wiring')
  const labels = requiredLabels(project, input.wire.values)
  const drawn = drawnLabels(input)
  const prices = readPriceList(
    'prices.yaml',
    'format: gablewatt-prices/1\nsupplier: Invented\nitems:\n  label: { name: Printed label, pack: each, usd: 4 }\n  label.RSD_PLACARD: { name: Engraved placard, pack: each, usd: 19 }\n',
  )
  const bill = priceBom({
    project,
    arrangement: input.arrangement,
    mounts: input.mounts,
    wire: input.wire,
    labels,
    prices,
  }).values
  const outcome = await planRun(contextOf(project), {})
  if (!('report' in outcome)) throw new Error('no plan')
  const plan = (outcome.report.result.values as WorkPlanValues).steps.find((step) => step.id === 'equipment.labels')
  return labels.map((label) => ({
    label,
    row: publishedRow(label.id, edition, project),
    drawn,
    bill: bill.lines.find((line) => line.item === `label.${label.id}`),
    plan: (plan?.tasks ?? [])
      .filter(
        (task) => task.says.startsWith(`label ${label.number}, `) || task.says.startsWith(`label ${label.number} on `),
      )
      .map((task) => task.says)
      .join('\n'),
  }))
}

/** The edition whose words are printed: for 2026, which nobody read, those of 2023. */
const wordsOf = (edition: Edition): Edition => (edition === 'NEC 2026' ? 'NEC 2023' : edition)

/** The row of the edition; of the placard of 2017 the form for an array that is brought down, or that stays live. */
function publishedRow(id: string, edition: Edition, project: Project): Record<string, string> | undefined {
  const inside = project.electrical?.rapid_shutdown?.inside_boundary
  const live = project.inverter_units !== undefined && inside === 'no_exposed_parts'
  const wanted = id === 'RSD_PLACARD' && edition === 'NEC 2017' ? `RSD_PLACARD_${live ? 'B' : 'A'}` : id
  return published.find((row) => row['label_id'] === wanted && `NEC ${row['edition']}` === wordsOf(edition))
}

/** Lines of text on the labels of a sheet. */
const drawnLetters = (seen: readonly Seen[]): number => seen[0]?.drawn.letters.length ?? 0

const noParts = (): Project => {
  const house = stringHouse()
  return {
    ...house,
    electrical: {
      ...house.electrical,
      rapid_shutdown: { inside_boundary: 'no_exposed_parts', initiator: 'pv_disconnect', initiator_outdoors: true },
    },
  }
}
/** The breaker stands beside the main, so that only the sum of the breakers lets it. */
const sumOfBreakers = (): Project => {
  const house = microHouse()
  const { panel } = house.electrical ?? {}
  return {
    ...house,
    electrical: {
      ...house.electrical,
      connection: { kind: 'load_side_breaker', breaker_position: 'other', breaker_marked_line_load: false },
      panel: { ...panel, breakers_a: [20, 20, 30, 50] },
    },
  }
}
/** Rows of the published table that some house was compared with. */
const met = new Set<string>()
const houses = [
  ['module-level inverters', microHouse],
  ['breakers in the panel', noCombiner],
  ['strings on the supply side', stringHouse],
  ['strings that stay live', noParts],
  ['a panel by the sum of its breakers', sumOfBreakers],
] as const

describe.each(houses.flatMap(([name, make]) => editions.map((edition) => [name, edition, make] as const)))(
  'labels of %s by %s',
  (_, edition, make) => {
    let seen: Seen[]
    beforeAll(async () => {
      seen = await see(make(), edition)
    }, 60_000)

    const firstPhrase = (row: Record<string, string>): string | undefined => {
      const words = row['words'] ?? ''
      const year = /^as (\d{4})/u.exec(words)?.[1]
      if (year !== undefined) {
        const other = published.find((each) => each['label_id'] === row['label_id'] && each['edition'] === year)
        return other === undefined ? undefined : firstPhrase(other)
      }
      return words.startsWith('(') ? undefined : words.split('  or  ')[0]
    }

    test('the words stand as published: on the sheet, in the bill, in the plan', () => {
      expect(seen.length).toBeGreaterThan(4)
      for (const { label, row, drawn, bill, plan } of seen) {
        const phrase = row === undefined ? undefined : firstPhrase(row)
        if (phrase === undefined) continue
        met.add(`${row?.['label_id']} ${row?.['edition']}`)
        const words = flat(phrase.replaceAll(' / ', ' '))
        expect(linesOf(drawn, words), `${label.id} on the sheet: ${words}`).toBeDefined()
        for (const says of [bill?.why ?? '', plan]) expect(says.replaceAll(' / ', ' '), label.id).toContain(words)
      }
    })

    test('letters are as high and colours are as published', () => {
      expect(drawnLetters(seen)).toBeGreaterThan(10)
      for (const { label, row, drawn } of seen) {
        const phrase = row === undefined ? undefined : firstPhrase(row)
        if (row === undefined || phrase === undefined) continue
        const { letter_in: height = '', colours = '', title_line: title = '' } = row
        const parts = title === 'same' || title === '' ? [phrase] : [title, phrase.slice(title.length)]
        const heights = [/^(\S+)/u.exec(height)?.[1], /; (\S+) rest/u.exec(height)?.[1]]
        const looks = colours.startsWith('title')
          ? [/^title (\w+) on (\w+)/u.exec(colours), /rest (\w+) on (\w+)/u.exec(colours)]
          : [/^(\w+) on (\w+)$/u.exec(colours)]
        const lines = linesOf(drawn, flat(phrase.replaceAll(' / ', ' '))) ?? []
        const inTitle = (line: Letter): boolean =>
          parts.length === 1 || flat(`${title}.:`).includes(flat(line.text).replace(/[.:]$/u, ''))
        for (const line of lines) {
          const at = inTitle(line) ? 0 : 1
          const least = inchesOf[heights[at] ?? '']
          if (least !== undefined) expect(line.capsIn, `${label.id}: ${line.text}`).toBeGreaterThanOrEqual(least - 1e-9)
          const look = looks[at]
          if (look !== undefined && look !== null)
            expect([line.ink, line.ground], `${label.id}: ${line.text}`).toEqual([look[1], look[2]])
        }
      }
    })

    test('reflective and the spacing are told everywhere where published, and nowhere else', () => {
      for (const { label, row, drawn, bill, plan } of seen) {
        const reflective = row?.['reflective'] === 'yes'
        expect(label.reflective, label.id).toBe(reflective)
        const note = flat(`${label.count} needed: ${label.counted}. Make: ${label.onSheet.look}.`)
        expect(drawn.notes, label.id).toContain(note)
        expect(bill?.name.endsWith(', reflective'), label.id).toBe(reflective)
        for (const says of [note, bill?.why ?? '', plan]) {
          expect(says.includes('REFLECTIVE'), `${label.id}: ${says}`).toBe(reflective)
          expect(says.includes('every 10 ft and on each section'), label.id).toBe((row?.['spacing_ft'] ?? '') === '10')
        }
        expect(bill?.quantity, label.id).toBe(label.count)
      }
    })

    test('whose words they are is told: mandated, equivalent, free, or of another edition', () => {
      for (const { label, row, drawn, plan } of seen) {
        const status = row?.['words_status'] ?? ''
        const says = status.startsWith('mandated')
          ? `words mandated by ${wordsOf(edition)}`
          : status.startsWith('equivalent')
            ? `words of ${wordsOf(edition)}`
            : status.startsWith('free')
              ? `content prescribed by ${wordsOf(edition)}`
              : `${edition} are`
        expect(label.wording, label.id).toContain(
          row === undefined && label.wording.startsWith('no words for') ? edition : says,
        )
        expect(flat(drawn.notes).toLowerCase()).toContain(flat(label.onSheet.wording).toLowerCase())
        expect(label.onSheet.wording, label.id).not.toMatch(/secondary|memory|unverified|at hand/u)
        expect(label.source.startsWith(label.onSheet.source), label.id).toBe(true)
        expect(plan).toContain(label.wording)
      }
    })
  },
)

test('every published row of a label that the program draws was compared', () => {
  const drawn = [
    'RSD_PLACARD',
    'RSD_SWITCH',
    'DC_RACEWAY',
    'PV_DISC',
    'LINE_LOAD',
    'DIRECTORY',
    'BACKFED_BREAKER',
    'SUM_RULE',
    'GFP_WARNING',
  ]
  const rows = published.filter(
    (row) => drawn.includes((row['label_id'] ?? '').replace(/_[AB]$/u, '')) && row['words']?.startsWith('(') === false,
  )
  expect([...met].sort()).toEqual(rows.map((row) => `${row['label_id']} ${row['edition']}`).sort())
})

describe('what a label hangs on', () => {
  const of = (project: Project): RequiredLabel[] => {
    const { wire: wiring } = packetInput(project, '11x17', true)
    if (wiring === undefined) throw new Error('no wiring')
    return requiredLabels(project, wiring.values)
  }
  const byEdition = (base: Project, electrical: Edition): Project => ({ ...base, codes: { ...base.codes, electrical } })

  test('labels of a raceway with direct current: both ends, every 10 ft, and the cover where a section begins', () => {
    const house = stringHouse()
    const { runs, ...electrical } = house.electrical ?? {}
    const dc = runs?.['dc']
    if (dc === undefined) throw new Error('no run')
    const count = (lengths: readonly number[], location: 'roof' | 'buried' = 'roof') => {
      const segments = Object.fromEntries(
        lengths.map((length, index) => [
          `s${index}`,
          { location, height_above_roof_in: 1, length_ft: length, raceway: 'EMT' as const },
        ]),
      )
      const label = of({
        ...house,
        electrical: {
          ...electrical,
          runs: {
            ...runs,
            dc: { ...dc, segments: { array: { location: 'array', length_ft: 25, raceway: 'none' }, ...segments } },
          },
        },
      }).find((each) => each.id === 'DC_RACEWAY')
      return [label?.count, label?.along.map((each) => each.atFt)]
    }
    expect(count([20])).toEqual([4, [[0, 10, 20]]])
    expect(count([21])).toEqual([5, [[0, 10, 20, 21]]])
    expect(count([4, 15])).toEqual([
      7,
      [
        [0, 4],
        [0, 10, 15],
      ],
    ])
    expect(count([4, 15], 'buried')).toEqual([1, []])
  })

  test('the placard of 2017 says that the array stays live where only what leaves it is brought down', () => {
    const words = (project: Project) => of(byEdition(project, 'NEC 2017')).find((each) => each.id === 'RSD_PLACARD')
    expect(words(noParts())?.text).toContain('CONDUCTORS IN ARRAY REMAIN ENERGIZED IN SUNLIGHT')
    expect(words(noParts())?.parts.at(-1)?.figure).toBe('roof, array live')
    for (const house of [stringHouse(), microHouse()])
      expect(words(house)?.text).toContain('REDUCE SHOCK HAZARD IN ARRAY')
  })

  test('the switch label goes to whatever starts the shutdown, and the placard tells where that is', () => {
    const at = (initiator: 'service_disconnect' | 'pv_disconnect' | 'switch') => {
      const house = microHouse()
      const labels = of({
        ...house,
        electrical: { ...house.electrical, rapid_shutdown: { initiator, initiator_outdoors: true } },
      })
      return [
        labels.find((each) => each.id === 'RSD_SWITCH')?.places,
        /RAPID SHUTDOWN SWITCH: (.*)$/u.exec(labels.find((each) => each.id === 'RSD_PLACARD')?.text ?? '')?.[1],
      ]
    }
    expect(at('service_disconnect')).toEqual([['main_panel'], 'SERVICE DISCONNECT, OUTDOORS'])
    expect(at('pv_disconnect')).toEqual([['pv_disconnect'], 'PV SYSTEM DISCONNECT, OUTSIDE, OUTDOORS'])
    expect(at('switch')).toEqual([['shutdown_switch'], 'SEPARATE SWITCH, OUTDOORS'])
  })

  test('one at each PV disconnect, and the directory at each and at the service', () => {
    const house = microHouse()
    const one = house.electrical?.disconnects?.['outside']
    if (one === undefined) throw new Error('no disconnect')
    const labels = of({ ...house, electrical: { ...house.electrical, disconnects: { outside: one, yard: one } } })
    const count = (id: string) => labels.find((each) => each.id === id)?.count
    expect([count('PV_DISC'), count('DIRECTORY'), count('AC_POI')]).toEqual([2, 3, 2])
  })

  test('a house with modules that are brought down and modules that stay live shows which', () => {
    const house = noParts()
    const micro = microHouse()
    const [south, other] = [house.arrays['south'], micro.arrays['south']]
    if (south === undefined || other === undefined) throw new Error('no array')
    const { arrangement: _, strings: __, ...rest } = { ...other, strings: undefined }
    const mixed = {
      ...house,
      equipment: { ...house.equipment, inverters: { ...house.equipment.inverters, ...micro.equipment.inverters } },
      arrays: { south, few: { ...rest, modules: 2 } },
    }
    const { wire: wiring } = packetInput(house, '11x17', true)
    if (wiring === undefined) throw new Error('no wiring')
    const ids = requiredLabels(mixed as Project, wiring.values).map((each) => each.id)
    expect(ids).toContain('MULTI_RSD')
    expect(requiredLabels(house, wiring.values).map((each) => each.id)).not.toContain('MULTI_RSD')
  })

  test('what the project file does not tell is asked on the sheet, with the words of the code', () => {
    const asked = (project: Project) => {
      const { wire: wiring } = packetInput(project, '11x17', true)
      if (wiring === undefined) throw new Error('no wiring')
      return labelsToAsk(project, wiring.values)
    }
    const words = (project: Project) => asked(project).flatMap((each) => each.phrases)
    expect(words(microHouse())).toContain('EMERGENCY DISCONNECT, SERVICE DISCONNECT')
    expect(words(byEdition(microHouse(), 'NEC 2017'))).toEqual([])
    const early = asked(byEdition(stringHouse(), 'NEC 2011'))
    expect(early.flatMap((each) => each.phrases).join(' ')).toContain(
      'CONDUCTORS OF THIS PHOTOVOLTAIC SYSTEM ARE UNGROUNDED',
    )
    const late = asked(byEdition(stringHouse(), 'NEC 2023'))
    expect(late.find((each) => each.phrases.includes('EMERGENCY DISCONNECT, SERVICE DISCONNECT'))?.look).toBe(
      'white on red, capitals at least 1/2"',
    )
    expect(late.find((each) => each.phrases.includes('WARNING: PHOTOVOLTAIC POWER SOURCE'))?.look).toContain(
      'REFLECTIVE',
    )
    const notes = drawnLabels(packetInput(byEdition(stringHouse(), 'NEC 2023'), '11x17', true)).notes
    for (const each of late) expect(notes).toContain(flat(each.phrases.join('; ')))
  })
})
