import { describe, expect, test } from 'vitest'
import { drawPacket, packetGaps } from '../../src/drawings/index.js'
import type { Project } from '../../src/project/index.js'
import { calculationRows, groupedRows } from '../../src/drawings/sheets/calculation-rows.js'
import type { Step } from '../../src/worksheet/index.js'
import { hipHouse, microHouse, packetInput, stringHouse } from './demo-packet.js'
import { readPacket, tablesOf } from './read-sheet.js'

const tight = (text: string | undefined): string => (text ?? '').replaceAll(/\s+/gu, '')
const HEADS = ['What is worked out', 'Formula', 'Numbers', 'Result', 'Check', 'Source']

/** Digits as the sheets write them: four decimals below 10, two below 1000, none above, seven for the smallest. */
function digits(value: number | string): string {
  if (typeof value === 'string') return value
  const size = Math.abs(value)
  const decimals = size >= 1000 ? 0 : size >= 10 ? 2 : size >= 0.01 || size === 0 ? 4 : 7
  return String(Number(value.toFixed(decimals)))
}

/** The demo house with another id for its roof plane. */
function planeCalled(id: string): Project {
  const base = microHouse()
  const [plane, array, framing] = [
    base.roof_planes['south']!,
    base.arrays['south']!,
    base.structure?.framing?.['south'],
  ]
  return microHouse({
    roof_planes: { [id]: plane },
    arrays: { south: { ...array, roof_plane: id } },
    structure: { ...base.structure!, framing: { [id]: framing! } },
    site_plan: { ...base.site_plan!, roof_planes: { [id]: base.site_plan!.roof_planes!['south']! } },
  })
}

/** Headings of the structural calculation with how many steps stand under each, whatever the plane is called. */
function headingsOf(id: string): string[] {
  const read = readPacket(packetInput(planeCalled(id))).filter(({ sheet }) => sheet.id.startsWith('S-601'))
  return read.flatMap(({ said }) =>
    said
      .filter(({ lines }) => lines[0]?.face === 'bold' && (lines[0].sizePt ?? 0) > 8.5)
      .map(({ text }) => text.replace(`Roof plane ${id}`, 'Roof plane *'))
      .filter((text) => /^(?:The |Roof plane )/u.test(text)),
  )
}

describe('headings of the structural calculation', () => {
  const usual = headingsOf('south')
  test('are the whole roof, the plane and the hardest cases', () =>
    expect(new Set(usual)).toEqual(new Set(['The whole roof', 'Roof plane *', 'The hardest case of each check'])))
  // Words that ids of steps, or headings, have too.
  test.each(['check', 'check-rail-moment', 'rail', 'kz'])('are the same for a plane called %s', (id) => {
    expect(headingsOf(id)).toEqual(usual)
    const ids = packetInput(planeCalled(id)).mounts?.worksheet.map((step) => step.id) ?? []
    expect(new Set(ids).size).toBe(ids.length)
  })
})

describe.each([
  ['branches', microHouse],
  ['strings', stringHouse],
  ['three planes', hipHouse],
] as const)('calculations of %s', (_, make) => {
  const input = packetInput(make())
  const packet = readPacket(input)

  test.each([
    ['S-601', 'Structural calculation', input.mounts?.worksheet, false],
    ['E-603', 'Electrical calculation', input.wire?.worksheet, true],
  ] as const)('%s has every step with formula, numbers, result, check and source', (id, title, steps = [], named) => {
    const sheets = packet.filter(({ sheet }) => sheet.id === id || sheet.id.startsWith(`${id}-`))
    expect(sheets.map(({ sheet }) => [sheet.id, sheet.title, sheet.scaleNote])).toEqual(
      sheets.map((__, index) => [
        index === 0 ? id : `${id}-${index + 1}`,
        index === 0 ? title : `${title}, continued`,
        'None',
      ]),
    )
    const found = sheets.flatMap((read) => tablesOf(read, HEADS).flat())
    const subject = (step: Step): string | undefined => {
      if (named) return step.id.split('.').slice(1, -1).join('.') || undefined
      const part = step.id.split('.')[1] ?? ''
      return part in input.project.roof_planes ? part : part.startsWith('check-') ? 'hardest' : undefined
    }
    const expected = calculationRows(steps, subject)
    // Every step stands in one row, and no row twice.
    expect(expected.flatMap(({ ids }) => ids).toSorted()).toEqual(steps.map(({ id: each }) => each).toSorted())
    expect(found).toHaveLength(expected.length)
    const inOrder = named ? expected : groupedRows(expected).flatMap(({ rows }) => rows)
    const byId = new Map(steps.map((step) => [step.id, step]))
    for (const [index, { subjects, says, ids }] of inOrder.entries()) {
      const [what, formula, numbers, result, check, source] = (found[index] ?? []).map(tight)
      const of = (value: number | string, unit: string): string => tight(`${digits(value)} ${unit}`)
      // In the electrical one each row begins with the circuits or segments that it is about.
      expect(what).toBe(tight(named && subjects.length > 0 ? `${subjects.join(', ')}: ${says}` : says))
      for (const step of ids.map((each) => byId.get(each)!)) {
        expect(formula).toBe(tight(step.formula))
        expect(numbers).toBe(
          step.inputs.map(({ symbol, value, unit }) => tight(`${symbol}=`) + of(value, unit)).join(';'),
        )
        expect(result).toBe(tight(`${step.result.symbol}=`) + of(step.result.value, step.result.unit))
        expect(check).toBe(
          step.check === undefined
            ? ''
            : tight(
                `${step.check.relation === '<=' ? '≤' : '≥'} ${of(step.check.limit, '')}: ${step.check.pass ? 'passes' : 'FAILS'}`,
              ),
        )
        expect(source?.startsWith(tight(step.source.document))).toBe(true)
        expect(source).not.toMatch(/memory|unverified|secondary|nosource/u)
      }
    }
  })
})

describe('rows of a calculation', () => {
  const step = (id: string, says: string, value = 3): Step => ({
    id,
    says,
    formula: 'p = q',
    inputs: [{ symbol: 'q', value, unit: 'psf', from: id }],
    result: { symbol: 'p', value, unit: 'psf' },
    source: { document: 'ASCE 7-16', standing: 'read' },
  })
  const rowsOf = (steps: readonly Step[]) =>
    calculationRows(steps, ({ id }) => (id.startsWith('structure.all') ? undefined : id.split('.')[1])).map(
      ({ subjects, says, ids }) => [subjects.join(' '), says, ids.length],
    )

  test('are one for zones and planes with the same numbers, and only for these', () => {
    expect(
      rowsOf([
        step('structure.all', 'Velocity pressure'),
        step('structure.south.zone-1', 'Wind away from the roof in zone 1'),
        step('structure.south.zone-2e', 'Wind away from the roof in zone 2e', 4),
        step('structure.south.zone-2r', 'Wind away from the roof in zone 2r', 4),
        step('structure.south.snow', 'Snow on plane south'),
        step('structure.west.zone-1', 'Wind away from the roof in zone 1'),
        step('structure.west.zone-2e', 'Wind towards the roof in zone 2e', 4),
        step('structure.west.snow', 'Snow on plane west'),
      ]),
    ).toEqual([
      ['', 'Velocity pressure', 1],
      ['south west', 'Wind away from the roof in zone 1', 2],
      ['south', 'Wind away from the roof in zones 2e, 2r', 2],
      ['south west', 'Snow on each plane', 2],
      ['west', 'Wind towards the roof in zone 2e', 1],
    ])
  })

  test('stay apart where formula, unit, check or source differ', () => {
    const first = step('structure.south.a', 'Load')
    const others: Step[] = [
      { ...first, formula: 'p = 2 q' },
      { ...first, result: { ...first.result, unit: 'lb' } },
      { ...first, check: { relation: '<=', limit: 4, pass: true } },
      { ...first, source: { document: 'ASCE 7-22', standing: 'read' } },
    ]
    expect(rowsOf([first, ...others.map((each, index) => ({ ...each, id: `structure.west.${index}` }))])).toHaveLength(
      5,
    )
  })
})

const without = <T extends object, K extends keyof T>(thing: T, key: K): Omit<T, K> =>
  Object.fromEntries(Object.entries(thing).filter(([each]) => each !== key)) as Omit<T, K>

describe('what stops a packet', () => {
  const gapsOf = (project: Project) => packetGaps(packetInput(project, '11x17', true))

  test('nothing of a whole project', () => expect(gapsOf(microHouse())).toEqual([]))

  test.each<[string, string, string, string, (project: Project) => Project]>([
    [
      'permit.no-date',
      'document.date',
      'the sheets have no date of issue',
      'State document.date; nothing is taken from the clock.',
      (project) => without(project, 'document'),
    ],
    [
      'permit.no-electrical-code',
      'codes.electrical',
      'no edition of the electrical code is stated',
      'Ask the building department which edition it has adopted.',
      (project) => ({ ...project, codes: { residential: 'IRC 2021' } }),
    ],
    [
      'permit.no-residential-code',
      'codes.residential',
      'no edition of the residential or fire code is stated',
      'Ask the building department which edition it has adopted.',
      (project) => ({ ...project, codes: { electrical: 'NEC 2020' } }),
    ],
    [
      'permit.no-address',
      'site.address',
      'the sheets have no address of the site',
      'State site.address.',
      (project) => ({ ...project, site: without(project.site, 'address') }),
    ],
    [
      'permit.no-site-plan',
      'site_plan',
      'there is no site plan, so sheet C-101 cannot be drawn',
      'State the lot, the buildings and the equipment under site_plan; the assessor’s map shows the lot.',
      (project) => without(project, 'site_plan'),
    ],
    [
      'permit.no-attachment',
      'structure',
      'rail, mount or framing is not stated, so sheet S-501 cannot be drawn',
      'State structure.rail, structure.mount and structure.framing with their equipment.',
      (project) => without(project, 'structure'),
    ],
  ])('%s', (id, where, message, fix, change) => {
    // The stages are those of the whole house; only what the packet itself asks for is missing.
    const gaps = packetGaps({ ...packetInput(microHouse()), project: change(microHouse()) })
    expect(gaps).toEqual([{ severity: 'error', id, where, message, fix }])
  })

  test('no module on a plane, and a plane without an outline', () => {
    const input = packetInput(microHouse())
    const { values } = input.arrangement
    const bare = packetGaps({ ...input, arrangement: { ...input.arrangement, values: { ...values, modules: [] } } })
    expect(bare.map(({ id, where }) => [id, where])).toEqual([['permit.no-roof-plan', 'arrays']])
    const lost = packetGaps({ ...input, arrangement: { ...input.arrangement, values: { ...values, planes: {} } } })
    expect(lost).toEqual([
      {
        severity: 'error',
        id: 'permit.no-outline',
        where: 'roof_planes.south.outline',
        message: 'roof plane south has no outline, so its roof plan cannot be drawn',
        fix: 'State the outline of the plane.',
      },
    ])
  })

  test('a character that no font has, wherever it is printed, with its place', () => {
    const base = microHouse()
    const at = (project: Project) => () => drawPacket(packetInput(project, '11x17', true))
    const broken: readonly (readonly [Project, string])[] = [
      [{ ...base, parties: { ...base.parties, owner: { name: 'Ωμέγα 李' } } }, 'parties.owner.name'],
      [{ ...base, document: { ...base.document, revision: '李' } }, 'document.revision'],
      [{ ...base, site: { ...base.site, address: '李 1' } }, 'site.address'],
      [{ ...base, codes: { ...base.codes, local_amendments: ['ok', '李'] } }, 'codes.local_amendments.1'],
      [
        {
          ...base,
          site_plan: { ...base.site_plan, street: { name: '李', lot_line: 1 } } as NonNullable<Project['site_plan']>,
        },
        'site_plan.street.name',
      ],
    ]
    for (const [project, where] of broken)
      expect(at(project)).toThrow(
        expect.objectContaining({ where, message: expect.stringContaining("'李' (U+674E)") as string }) as Error,
      )
    expect(at({ ...base, parties: { ...base.parties, owner: { name: 'Ωμέγα Živković Юрий' } } })).not.toThrow()
  })
})
