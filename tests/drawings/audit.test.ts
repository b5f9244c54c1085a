import { describe, expect, test } from 'vitest'
import { auditPacket, drawPacket, JUDGES, type PacketInput, type Sheet } from '../../src/drawings/index.js'
import type { Authority, Project } from '../../src/project/index.js'
import { CHECKLIST, checklistIds } from '../../src/tables/permit/index.js'
import { microHouse, packetInput, stringHouse } from './demo-packet.js'

/** The INVENTED house with everything that a reviewer asks of its owner. */
function completeHouse(): Project {
  const base = microHouse()
  const framing = base.structure?.framing?.['south']
  if (framing === undefined || base.site_plan === undefined) throw new Error('no base')
  return {
    ...base,
    site: { ...base.site, parcel: '000-00-000 (invented)' },
    structure: { ...base.structure, framing: { south: { ...framing, covering_layers: 1 } } },
    site_plan: { ...base.site_plan, second_street: { name: 'Finch Rise', lot_line: 2 } },
    electrical: {
      ...base.electrical,
      service: { ...base.electrical?.service, bonding: { electrodes: ['rod', 'water_pipe'] } },
    },
    existing_house: {
      wiring_inside: true,
      smoke_alarms: 'all',
      carbon_monoxide_source: true,
      carbon_monoxide_alarms: 'all',
      electrodes_bonded: true,
      panel_space: { width_in: 36, depth_in: 40, height_in: 84 },
      service_replaced: false,
    },
  }
}

const documents: PacketInput['documents'] = [
  { path: 'm410.pdf', pages: 2, items: ['modules.m410'], kind: 'data_sheet' },
  { path: 'micro.pdf', pages: 1, items: ['inverters.micro366'], kind: 'data_sheet' },
  { path: 'rack.pdf', pages: 3, items: ['rails.rail40', 'mounts.foot'], kind: 'data_sheet' },
  { path: 'photos.pdf', pages: 1, kind: 'photograph' },
  { path: 'form.pdf', pages: 1, kind: 'form' },
  { path: 'hoa.pdf', pages: 1, kind: 'hoa_approval' },
  { path: 'utility.pdf', pages: 1, kind: 'utility_approval' },
]

const inputOf = (project: Project, more: Partial<PacketInput> = {}): PacketInput => ({
  ...packetInput(project),
  documents,
  ...more,
})

const complete = inputOf(completeHouse())
const sheets = drawPacket(complete)
const audited = (input: PacketInput, drawn: readonly Sheet[] = drawPacket(input)) => auditPacket(input, drawn)
const pointOf = (result: ReturnType<typeof audited>, id: string) => {
  const point = result.values.points.find((each) => each.id === id)
  if (point === undefined) throw new Error(`no point ${id}`)
  return point
}
const whole = audited(complete, sheets)

describe('the audit of a packet', () => {
  test('every point of the list has a way to look it up, and no other has', () => {
    expect(Object.keys(JUDGES).toSorted()).toEqual([...checklistIds].toSorted())
    expect(new Set(checklistIds).size).toBe(checklistIds.length)
  })

  test('a complete packet lacks the elevation alone, which no sheet shows', () => {
    expect(whole.values.points.filter(({ state, id }) => state === 'missing' && id !== 'elevation')).toEqual([])
    expect(whole.values.present + whole.values.missing + whole.values.not_applicable).toBe(CHECKLIST.length)
  })

  const onSheets = whole.values.points.filter(
    ({ state, sheets: on }) => state === 'present' && /^[A-Z]-/u.test(on[0] ?? ''),
  )
  const onDrawings = onSheets.filter(({ sheets: on }) => !on.every((id) => id.startsWith('X-')))

  test('most points are looked up on drawings', () => expect(onDrawings.length).toBeGreaterThan(25))

  test.each(onDrawings.map(({ id }) => id))('%s is missing when the sheets that show it are taken out', (id) => {
    let left: readonly Sheet[] = sheets
    for (let round = 0; round < sheets.length; round++) {
      const { state, sheets: on } = pointOf(audited(complete, left), id)
      if (state !== 'present') {
        expect(state).toBe('missing')
        return
      }
      const shorter = left.filter((sheet) => !on.includes(sheet.id))
      expect(shorter.length, `${id} is present without a sheet`).toBeLessThan(left.length)
      left = shorter
    }
  })

  test.each(['names-on-sheets', 'title-block', 'stamp-room'])('%s is missing when one sheet is blank', (id) => {
    const blank = sheets.map((sheet, index) => (index === 3 ? { ...sheet, paper: [] } : sheet))
    expect(pointOf(audited(complete, blank), id)).toMatchObject({ state: 'missing' })
    expect(pointOf(audited(complete, blank), id).what).toContain(sheets[3]?.id)
  })

  test('an index that leaves a sheet out is told', () => {
    const renamed = sheets.map((sheet) => (sheet.id === 'S-501' ? { ...sheet, id: 'S-777' } : sheet))
    expect(pointOf(audited(complete, renamed), 'sheet-index').what).toBe('not in the index: S-777')
  })

  const papers = onSheets.filter(({ sheets: on }) => on.every((id) => id.startsWith('X-'))).map(({ id }) => id)
  test('papers of other people', () =>
    expect(papers.toSorted()).toEqual(
      'application association photographs sheet-inverters sheet-modules sheet-mounts sheet-rails utility-approval'.split(
        ' ',
      ),
    ))
  test.each(papers)('%s is missing without documents', (id) => {
    expect(pointOf(audited({ ...complete, documents: [] }, sheets), id).state).toBe('missing')
  })

  test('pages are counted: the sheet of rail and mount begins after three pages', () => {
    expect(pointOf(whole, 'sheet-rails').sheets).toEqual(['X-004 to X-006'])
  })

  const without = (change: (project: Project) => Project, id: string): string => {
    const input = inputOf(change(completeHouse()))
    return `${pointOf(audited(input), id).state}: ${pointOf(audited(input), id).what}`
  }

  test.each<[string, string, (project: Project) => Project]>([
    ['parcel', 'parcel number: not stated', (each) => ({ ...each, site: microHouse().site })],
    ['roof-covering', 'layers on south: not stated', (each) => ({ ...each, structure: microHouse().structure ?? {} })],
    ['corner-lot', 'not stated', (each) => ({ ...each, ...part('site_plan', microHouse()) })],
    [
      'grounding',
      'electrodes that are there: not stated',
      (each) => ({ ...each, ...part('electrical', microHouse()) }),
    ],
    ['alarms', 'where smoke alarms are is not stated', (each) => ({ ...each, existing_house: {} })],
    [
      'names-on-sheets',
      "contractor: not stated; contractor's licence: not stated; preparer: not stated",
      (each) => ({ ...each, parties: { owner: { name: 'A. Lindqvist (invented)' } } }),
    ],
  ])('%s is missing when it is not stated', (id, what, change) => {
    const found = without(change, id)
    expect(found.startsWith('missing: ')).toBe(true)
    expect(found).toContain(what)
  })

  test('a lot on one street needs no second', () => {
    const { site_plan: plan } = completeHouse()
    if (plan === undefined) throw new Error('no plan')
    const input = inputOf({ ...completeHouse(), site_plan: { ...plan, second_street: 'none' } })
    expect(pointOf(audited(input), 'corner-lot').state).toBe('not_applicable')
  })

  test('the second street is drawn at its lot line', () => {
    expect(pointOf(whole, 'corner-lot')).toMatchObject({ state: 'present', sheets: ['C-101'] })
  })

  test('strings apply where branches do not', () => {
    const strings = audited(inputOf(stringHouse()))
    expect([pointOf(strings, 'strings').state, pointOf(strings, 'branches').state]).toEqual([
      'present',
      'not_applicable',
    ])
    expect([pointOf(whole, 'strings').state, pointOf(whole, 'branches').state]).toEqual(['not_applicable', 'present'])
  })
})

function part<K extends keyof Project>(key: K, project: Project): Pick<Project, K> {
  return { [key]: project[key] } as Pick<Project, K>
}

test('the index of the cover names what each document is the sheet of', () => {
  const index = drawPacket(complete).filter(({ id }) => id.startsWith('G-001'))
  expect(JSON.stringify(index)).toContain('for Invented M410')
  expect(JSON.stringify(index)).toContain('for Invented rail 40,')
})

describe('what one authority asks', () => {
  const authority: Authority = {
    format: 'gablewatt-authority/1',
    name: 'Sampletown Building Office (invented)',
    not_asked: ['elevation', 'photographs'],
    also_asked: {
      chimney: { asks: 'Chimney on the roof plan', supplied_by: 'owner', words: 'chimney', sheets: 'A' },
      parapet: { asks: 'Note on the parapet', supplied_by: 'engineer', words: 'parapet' },
      letter: { asks: 'Letter on wind', supplied_by: 'installer', document: 'wind' },
    },
  }

  test('points that it drops do not apply, its own are looked up', () => {
    const result = audited(inputOf(completeHouse(), { authority }))
    expect(pointOf(result, 'elevation')).toMatchObject({ state: 'not_applicable', required: false })
    expect(pointOf(result, 'chimney')).toMatchObject({ state: 'present', sheets: ['A-101'], lists: null })
    expect(pointOf(result, 'parapet').state).toBe('missing')
    expect(pointOf(result, 'letter').state).toBe('missing')
    const bound = inputOf(completeHouse(), { authority, documents: [{ path: 'w.pdf', pages: 1, id: 'wind' }] })
    expect(pointOf(audited(bound), 'letter')).toMatchObject({ state: 'present', sheets: ['X-001'] })
  })

  test('missing is an error where it asks, a warning while nobody says what it asks', () => {
    const severities = (input: PacketInput) =>
      new Set(
        audited(input)
          .findings.filter(({ id }) => id === 'audit.point-missing')
          .map(({ severity }) => severity),
      )
    expect(severities(inputOf(completeHouse(), { authority }))).toEqual(new Set(['error']))
    expect(severities(inputOf(microHouse()))).toEqual(new Set(['warning']))
  })

  test('its lettering is measured', () => {
    const low = audited(inputOf(completeHouse(), { authority: { ...authority, least_text_in: 0.125 } }), sheets)
    expect(pointOf(low, 'lettering')).toMatchObject({ state: 'missing' })
    const house: Project = { ...completeHouse(), drawings: { least_text_in: 0.125 } }
    const high = audited(inputOf(house, { authority: { ...authority, least_text_in: 0.125 } }))
    expect(pointOf(high, 'lettering')).toMatchObject({ state: 'present' })
  })

  test('its order of sheets and its paper', () => {
    const ordered = drawPacket(inputOf(completeHouse(), { authority: { ...authority, sheet_order: ['E', 'A'] } }))
    expect([...new Set(ordered.map(({ id }) => id.charAt(0)))].join('')).toBe('GEACS')
    const other = audited(inputOf(completeHouse(), { authority: { ...authority, paper: 'letter' } }), sheets)
    expect(other.findings.map(({ id }) => id)).toContain('audit.other-paper')
  })

  test('an amendment stands on the cover and in no title strip', () => {
    const rule = 'Street-side disconnect label in red'
    const house = completeHouse()
    const drawn = drawPacket(inputOf({ ...house, codes: { ...house.codes, local_amendments: [rule] } }))
    const having = drawn.filter((sheet) => JSON.stringify(sheet).includes('Street-side')).map(({ id }) => id)
    expect(having.every((id) => id.startsWith('G-'))).toBe(true)
    expect(having.length).toBe(1)
  })
})

describe('the short review', () => {
  const limits: NonNullable<Authority['expedited']> = {
    max_ac_kw: 10,
    max_inverters: 20,
    load_side_only: true,
    max_bus_a: 225,
    no_storage: true,
    max_module_isc_a: 15,
    min_gap_in: 2,
    max_gap_in: 10,
    max_dead_load_psf: 5,
    max_mount_spacing_in: 48,
    max_roof_height_ft: 30,
  }
  const review = (expedited: Authority['expedited'], project = completeHouse()) =>
    audited(
      inputOf(project, {
        authority: {
          format: 'gablewatt-authority/1',
          name: 'Sampletown (invented)',
          ...(expedited === undefined ? {} : { expedited }),
        },
      }),
      sheets,
    ).values.expedited

  test('a house within all limits', () => {
    expect(review(limits)).toMatchObject({
      eligible: true,
      verdict: 'eligible for the short review: all 10 limits are kept',
    })
    expect(review(undefined)).toBe(null)
  })

  test.each<[keyof typeof limits, number, string]>([
    ['max_ac_kw', 5, 'output at most 5 kW AC, it is 5.51 kW AC'],
    ['max_inverters', 14, 'inverters at most 14, it is 15'],
    ['max_bus_a', 125, 'busbar at most 125 A, it is 200 A'],
    ['max_module_isc_a', 9.6, 'short-circuit current of a module at most 9.6 A, it is 13.87 A'],
    ['min_gap_in', 5, 'gap under the modules from 5 in to 10 in, it is 4 in'],
    ['max_gap_in', 3, 'gap under the modules from 2 in to 3 in, it is 4 in'],
    ['max_dead_load_psf', 2, 'weight of the array at most 2 psf, it is '],
    ['max_mount_spacing_in', 20, 'spacing of mounts at most 20 in, it is 24 in'],
    ['max_roof_height_ft', 14, 'mean height of the roof at most 14 ft, it is 15 ft'],
  ])('%s of %s', (key, limit, told) => {
    const found = review({ ...limits, [key]: limit })
    expect(found?.eligible).toBe(false)
    expect(found?.verdict).toContain(`not eligible, normal review: ${told}`)
    expect(found?.lines.filter(({ holds }) => holds !== true)).toHaveLength(1)
  })

  test('inverters behind modules count apart where a limit of their own is stated', () => {
    expect(review({ max_inverters: 2, max_module_inverters: 15 })?.eligible).toBe(true)
    expect(review({ max_inverters: 2, max_module_inverters: 14 })?.eligible).toBe(false)
  })

  test('the supply side, and what is not stated', () => {
    expect(review({ load_side_only: true }, stringHouse())?.verdict).toContain('it is supply side')
    expect(review({ one_or_two_family: true })?.verdict).toContain('dwelling of one or two families, not stated')
  })

  test('a limit from a time of smaller cells is told', () => {
    expect(review({ max_module_isc_a: 9.6 })?.remarks.join('')).toContain('ask whether the list is in force')
    expect(review({ max_module_isc_a: 15 })?.remarks).toEqual([])
  })
})
