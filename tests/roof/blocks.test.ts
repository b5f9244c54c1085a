import { describe, expect, test } from 'vitest'
import { arrangeModules, moduleCentresFt, placeModules, rowsOf, textPlan } from '../../src/roof/index.js'
import type { Block } from '../../src/project/index.js'
import { StageError } from '../../src/worksheet/index.js'
import { roofProject } from './roof-project.js'

const RECTANGLE = { outline: { shape: 'rectangle' as const, width_ft: 30, depth_ft: 16 } }

function block(more: Partial<Block> = {}): Block {
  return { orientation: 'portrait', rows: 2, columns: 3, x_ft: 2, y_ft: 1, gap_in: 0, ...more }
}

function messages(project: Parameters<typeof arrangeModules>[0]): string[] {
  return arrangeModules(project)
    .findings.filter(({ severity }) => severity === 'error')
    .map(({ id, message }) => `${id}: ${message}`)
}

describe('blocks', () => {
  test('rows from the eave, columns from the left, gaps and omitted modules', () => {
    const arrangement = { blocks: { main: block({ gap_in: 6, row_gap_in: 12, omit: ['r2c2'] }) } }
    const modules = placeModules(roofProject(RECTANGLE, { arrangement }))
    expect(modules.map(({ id, xFt, yFt }) => [id, xFt, yFt])).toEqual([
      ['south.r1c1', 2, 1],
      ['south.r1c2', 5.5, 1],
      ['south.r1c3', 9, 1],
      ['south.r2c1', 2, 7],
      ['south.r2c3', 9, 7],
    ])
    expect(moduleCentresFt(modules)[1]).toEqual({ id: 'south.r1c2', xFt: 7, yFt: 3.5 })
    expect(rowsOf(modules.toReversed()).map((row) => row.modules.map((module) => module.column))).toEqual([
      [1, 3],
      [1, 2, 3],
    ])
  })

  test('landscape lays the long side along the eave, several blocks carry their id', () => {
    const arrangement = {
      blocks: { a: block({ orientation: 'landscape', rows: 1, columns: 1 }), b: block({ x_ft: 20 }) },
    }
    const [first] = placeModules(roofProject(RECTANGLE, { arrangement }))
    expect(first).toMatchObject({ id: 'south.a.r1c1', widthFt: 5, heightFt: 3, orientation: 'landscape' })
  })

  test('the gap that was not stated is told', () => {
    const { gap_in: _, ...rest } = block()
    const result = arrangeModules(roofProject(RECTANGLE, { arrangement: { blocks: { main: rest } } }))
    expect(result.assumptions).toMatchObject([{ path: 'arrays.south.arrangement.blocks.main.gap_in', value: 0.5 }])
  })

  test('overlaps, also between arrays, name both modules and the amount', () => {
    const base = roofProject(RECTANGLE, { arrangement: { blocks: { main: block({ rows: 1, columns: 1 }) } } })
    const south = base.arrays['south']
    if (south === undefined) throw new Error('no array')
    const second = { ...south, arrangement: { blocks: { main: block({ rows: 1, columns: 1, x_ft: 4.5, y_ft: 2 }) } } }
    expect(messages({ ...base, arrays: { south, second } })).toEqual([
      'roof.modules-overlap: south r1c1 and second r1c1 lie on each other by 6 in along the eave and 48 in up the slope',
    ])
  })

  test.each<[string, Partial<Block>, string]>([
    ['over the rake', { x_ft: -0.5 }, 'roof.module-outside: south r1c1 reaches 6 in beyond the rake of plane south'],
    ['over the ridge', { y_ft: 11.25 }, 'roof.module-outside: south r1c1 reaches 3 in beyond the ridge of plane south'],
    ['off the plane', { x_ft: 31 }, 'roof.module-outside: south r1c1 lies wholly off plane south, by up to 48 in'],
    [
      'on the chimney',
      { x_ft: 19, y_ft: 5 },
      'roof.module-on-obstruction: south r1c1 lies on chimney (24 in along the eave by 24 in up the slope)',
    ],
    [
      'near the chimney',
      { x_ft: 16.75, y_ft: 5 },
      'roof.obstruction-clearance: south r1c1 is 3 in from chimney; 6 in must stay free (3 in too near)',
    ],
    [
      'near the eave',
      { y_ft: 0.5 },
      'roof.edge-clearance: south r1c1 is 6 in from the eave; 9 in must stay free (3 in too near)',
    ],
  ])('%s', (_, where, message) => {
    const chimney = { x_ft: 20, y_ft: 8, width_ft: 2, length_ft: 3, height_ft: 4, clearance_in: 6 }
    const plane = { ...RECTANGLE, obstructions: { chimney }, edge_clearances: { eave_in: 9 } }
    const project = roofProject(plane, { arrangement: { blocks: { main: block({ rows: 1, columns: 1, ...where }) } } })
    expect(messages(project)).toEqual([message])
    expect(arrangeModules(project).findings[0]?.fix).toMatch(/^Move it/)
  })

  test('touching edges, neighbours and the rim of a clearance is allowed', () => {
    const chimney = { x_ft: 6.5, y_ft: 0, width_ft: 1, length_ft: 1, height_ft: 4, clearance_in: 6 }
    const plane = { ...RECTANGLE, obstructions: { chimney } }
    const project = roofProject(plane, {
      arrangement: { blocks: { main: block({ x_ft: 0, y_ft: 0, columns: 2 }), more: block({ x_ft: 21, y_ft: 6 }) } },
    })
    expect(messages(project)).toEqual([])
  })

  test('a notch corner that pokes into a module is found although its own corners lie on the plane', () => {
    const corners = [
      [0, 0],
      [8, 0],
      [10, 3],
      [12, 0],
      [20, 0],
      [20, 10],
      [0, 10],
    ].map(([x_ft = 0, y_ft = 0]) => ({ x_ft, y_ft }))
    const project = roofProject(
      { outline: { shape: 'polygon', corners } },
      {
        arrangement: { blocks: { main: block({ orientation: 'landscape', rows: 1, columns: 1, x_ft: 7.5, y_ft: 2 }) } },
      },
    )
    expect(messages(project)).toHaveLength(1)
    expect(messages(project)[0]).toMatch(/roof\.module-outside: south r1c1 reaches 12 in beyond/)
  })

  test('a stated number that differs from the blocks is an error', () => {
    const project = roofProject(RECTANGLE, { modules: 7, arrangement: { blocks: { main: block() } } })
    expect(messages(project)).toEqual(['roof.module-count: south states 7 modules, and its blocks hold 6'])
  })

  test.each<[string, Parameters<typeof roofProject>, string, RegExp]>([
    [
      'omit',
      [RECTANGLE, { arrangement: { blocks: { main: block({ omit: ['r3c1'] }) } } }],
      'arrays.south.arrangement.blocks.main.omit.0',
      /r3c1.*2 rows and 3 columns/,
    ],
    [
      'all omitted',
      [RECTANGLE, { arrangement: { blocks: { main: block({ rows: 1, columns: 1, omit: ['r1c1'] }) } } }],
      'arrays.south.arrangement.blocks.main.omit',
      /every module/,
    ],
    [
      'unknown module',
      [RECTANGLE, { module: 'x', arrangement: { blocks: { main: block() } } }],
      'arrays.south.module',
      /'x' is not under equipment.modules \(known: m\)/,
    ],
    ['unknown plane', [RECTANGLE, { roof_plane: 'west', modules: 1 }], 'arrays.south.roof_plane', /known: south/],
    ['nothing', [RECTANGLE], 'arrays.south', /neither modules nor arrangement/],
    [
      'fit without outline',
      [{ outline: undefined as never }, { arrangement: 'fit' }],
      'roof_planes.south.outline',
      /no outline/,
    ],
    [
      'no dimensions',
      [
        RECTANGLE,
        { arrangement: { blocks: { main: block() } } },
        { equipment: { modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.3, width_in: 40 } } } },
      ],
      'equipment.modules.m',
      /no length_in/,
    ],
  ])('refused: %s', (_, args, where, message) => {
    let caught: unknown
    try {
      arrangeModules(roofProject(...args))
    } catch (error) {
      caught = error
    }
    expect(caught).toBeInstanceOf(StageError)
    expect(caught).toMatchObject({ where, message: expect.stringMatching(message) })
  })

  test('only a number: no places, and a note that says so', () => {
    const result = arrangeModules(roofProject(RECTANGLE, { modules: 8 }))
    expect(result.values.modules).toEqual([])
    expect(result.findings.map(({ severity, id }) => [severity, id])).toEqual([
      ['note', 'roof.no-arrangement'],
      ['note', 'roof.fire-access-not-checked'],
    ])
  })
})

test('text plan: ridge on top, neighbours differ, marks win', () => {
  const chimney = { x_ft: 15, y_ft: 8, width_ft: 3, length_ft: 4, height_ft: 4 }
  const project = roofProject(
    { outline: { shape: 'rectangle', width_ft: 20, depth_ft: 12 }, obstructions: { chimney } },
    { arrangement: { blocks: { main: block({ x_ft: 1, y_ft: 0.5, rows: 2, columns: 2 }) } } },
  )
  const { planes, modules } = arrangeModules(project).values
  const plane = planes['south']
  if (plane === undefined) throw new Error('no plane')
  const plan = textPlan(plane, modules, [{ xFt: 2.5, yFt: 1, character: 'o' }], 20)
  expect(plan.split('\n')).toEqual([
    '...............XXX..',
    '.===###........XXX..',
    '.===###.............',
    '.###===.............',
    '.###===.............',
    '.#o#===.............',
  ])
})
