import { describe, expect, test } from 'vitest'
import { sheetSays } from '../../src/drawings/model/index.js'
import { loadProject, ProjectError, type Project } from '../../src/project/index.js'
import { stringify } from 'yaml'
import { microHouse, packetInput } from './demo-packet.js'
import { PAPERS } from './drawn-houses.js'
import { ptPerFt, readPacket, type ReadSheet, type Spot } from './read-sheet.js'

type Vicinity = NonNullable<NonNullable<Project['site_plan']>['vicinity']>

const ft = (x: number, y: number) => ({ x_ft: x, y_ft: y })
const mi = (x: number, y: number) => ({ x_mi: x, y_mi: y })

/** An INVENTED neighbourhood. */
const NEIGHBOURHOOD: Vicinity = {
  site: ft(120, 60),
  cross_street: 'mill',
  streets: {
    lark: { name: 'Lark Hollow', points: [ft(-700, 0), ft(500, 0), ft(1200, 200)] },
    mill: { name: 'Mill Road', points: [ft(-300, -800), ft(-300, 700)] },
    pike: { name: 'Old Sampletown Turnpike', points: [mi(-0.13, -0.15), mi(0.2, -0.12)] },
  },
}

function houseIn(vicinity: Vicinity | undefined): Project {
  const base = microHouse()
  return { ...base, site_plan: { ...base.site_plan!, ...(vicinity === undefined ? {} : { vicinity }) } }
}

/** The sketch as somebody with a scale rule reads it: the lines of its streets in feet from the mark of the site, y to the north. */
function readSketch(cover: ReadSheet) {
  const note = cover.said.find(({ text }) => /^SCALE 1" = \d+'-0"$/u.test(text))?.text.replace('SCALE ', '') ?? ''
  const scale = ptPerFt(note)
  const [site] = cover.circles.filter(({ fill, radius }) => fill === 'black' && radius > 3)
  if (site === undefined) throw new Error('no mark of the site')
  const toFt = ({ x, y }: Spot): Spot => ({ x: (x - site.center.x) / scale, y: (site.center.y - y) / scale })
  const lines = cover.paths.filter(({ layer }) => layer === 'street').map(({ points }) => points.map(toFt))
  return { scale, site: site.center, lines, toFt }
}

/** Pieces of the streets, ft from the site. A mile is 5280 ft. */
const PIECES = [
  [-700, 0, 500, 0],
  [500, 0, 1200, 200],
  [-300, -800, -300, 700],
  [-0.13 * 5280, -0.15 * 5280, 0.2 * 5280, -0.12 * 5280],
].map((piece) => piece.map((each, index) => each - (index % 2 === 0 ? 120 : 60)))

describe.each(PAPERS)('the vicinity sketch on %s', (size) => {
  const covers = readPacket(packetInput(houseIn(NEIGHBOURHOOD), size)).filter(({ sheet }) =>
    sheet.id.startsWith('G-001'),
  )
  const cover = covers.find(({ said }) => said.some(({ text }) => text === 'Vicinity'))
  if (cover === undefined) throw new Error('no sketch')
  const { scale, lines, site } = readSketch(cover)

  test('has every street to its scale, north up, in feet or in miles', () => {
    expect(lines).toHaveLength(PIECES.length)
    for (const [ax = 0, ay = 0, bx = 0, by = 0] of PIECES) {
      const found = lines.some(
        ([a, b]) => Math.hypot(a!.x - ax, a!.y - ay) < 0.5 && Math.hypot(b!.x - bx, b!.y - by) < 0.5,
      )
      expect([ax, ay, bx, by, found]).toEqual([ax, ay, bx, by, true])
    }
  })

  test('has a scale bar that is as long as it says, and a north arrow that points up', () => {
    const end = cover.said.find(({ text, middle }) => /^\d+ ft$/u.test(text) && middle.y < site.y)
    const bars = cover.boxes.filter(
      ({ pen, fill, height, y }) => pen === 'thin' && fill !== undefined && height < 8 && y < (end?.middle.y ?? 0),
    )
    const own = bars.filter(({ y }) => y > (end?.middle.y ?? 0) - 20)
    const width = own.reduce((sum, box) => sum + box.width, 0)
    expect(own).toHaveLength(4)
    expect(width / scale).toBeCloseTo(Number(end?.text.replace(' ft', '')), 0)
    const letter = cover.said.find(({ text }) => text === 'N')
    const circle = cover.circles.find(
      ({ center, fill }) => fill === undefined && Math.abs(center.x - (letter?.middle.x ?? 0)) < 1,
    )
    expect(circle!.center.y - letter!.middle.y).toBeGreaterThan(10)
  })

  test('names each street along it and beside it, and the cross street in words', () => {
    for (const { name, points } of Object.values(NEIGHBOURHOOD.streets)) {
      const [word] = cover.said.filter(({ text }) => text === name.toUpperCase())
      const line = word?.lines[0]
      const way =
        PIECES[
          Object.values(NEIGHBOURHOOD.streets).findIndex((each) => each.points === points) +
            (name === 'Lark Hollow' ? 0 : 1)
        ]!
      const angle = (Math.atan2(way[3]! - way[1]!, way[2]! - way[0]!) * 180) / Math.PI
      expect(line?.rotationDeg).toBeCloseTo(angle, 1)
    }
    expect(cover.words).toContain('Nearest cross street: Mill Road.')
    expect(cover.said.filter(({ text }) => text === 'SITE').length).toBeGreaterThanOrEqual(2)
  })

  test('is never told not to be to scale', () => {
    expect(cover.sheet.scaleNote).toBe('As noted')
    expect(sheetSays(cover.sheet)).not.toMatch(/not to scale/iu)
    expect(sheetSays(cover.sheet)).toContain('the nearest cross street is Mill Road')
    expect(cover.words).not.toMatch(/not to scale/iu)
  })
})

test('without streets there is none', () => {
  const [cover] = readPacket(packetInput(houseIn(undefined)))
  expect(cover?.said.some(({ text }) => text === 'Vicinity')).toBe(false)
  expect(cover?.sheet.scaleNote).toBe('None')
})

describe('bad streets are told with their place', () => {
  const problemsOf = (vicinity: unknown): string[] => {
    const text = stringify({ ...microHouse(), site_plan: { ...microHouse().site_plan, vicinity } })
    try {
      loadProject({ path: '-', text, baseFolder: '.' })
      return []
    } catch (error) {
      if (!(error instanceof ProjectError)) throw error
      const lines = text.split('\n')
      return error.problems.map(({ path, message, ...at }) => {
        // The line is that of the key or value in question.
        const line = 'line' in at ? lines[at.line - 1]!.trim() : ''
        return `${line} | ${path} | ${message}`
      })
    }
  }
  const street = { name: 'Lark Hollow', points: [ft(0, 0), ft(900, 0)] }
  test.each([
    [
      { site: ft(0, 0), streets: { lark: street }, cross_street: 'mill' },
      "cross_street: mill | site_plan.vicinity.cross_street | no 'mill' under streets; there is lark",
    ],
    [
      { site: ft(0, 0), streets: { lark: street }, cross_street: 'constructor' },
      "cross_street: constructor | site_plan.vicinity.cross_street | no 'constructor' under streets; there is lark",
    ],
    [
      { site: ft(0, 0), streets: { lark: { name: 'Lark Hollow', points: [mi(0, 0), mi(0.3, 0), mi(0.3001, 0)] } } },
      '- x_mi: 0.3001 | site_plan.vicinity.streets.lark.points.2 | the point at 0.3001, 0 mi stands where the one before it does; leave one of them out',
    ],
  ])('%#', (vicinity, told) => expect(problemsOf(vicinity)).toEqual([told]))
  test.each([
    [{ streets: { lark: street } }, 'site_plan.vicinity.site'],
    [{ site: ft(0, 0), streets: {} }, 'site_plan.vicinity.streets'],
    [{ site: { x_ft: 0, y_mi: 0 }, streets: { lark: street } }, 'site_plan.vicinity.site'],
    [
      { site: ft(0, 0), streets: { lark: { ...street, points: [ft(0, 0)] } } },
      'site_plan.vicinity.streets.lark.points',
    ],
  ])('a part that is missing or of two units %#', (vicinity, path) => {
    const [first] = problemsOf(vicinity)
    expect(first).toContain(` | ${path}`)
  })
  test('good ones are taken', () => expect(problemsOf(NEIGHBOURHOOD)).toEqual([]))
})
