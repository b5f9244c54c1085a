import { XMLParser, XMLValidator } from 'fast-xml-parser'
import { describe, expect, test } from 'vitest'
import { drawPacket, flattenSheet, renderSvg } from '../../src/drawings/index.js'
import { hatchLines, LAYERS } from '../../src/drawings/model/index.js'
import { hipHouse, microHouse, packetInput, stringHouse } from './demo-packet.js'
import { threeLevels } from './tree-houses.js'

const houses = [microHouse, hipHouse, stringHouse, threeLevels] as const

/** Every text of a parsed file, in order. */
const textsOf = (node: unknown): string[] =>
  Array.isArray(node)
    ? node.flatMap(textsOf)
    : typeof node === 'object' && node !== null
      ? Object.entries(node).flatMap(([key, value]) => (key === '#text' ? [String(value)] : textsOf(value)))
      : []

describe('SVG by layers', () => {
  test.each(houses)('%o: groups are named after their layers, each id once, in the order of drawing', (make) => {
    for (const sheet of drawPacket(packetInput(make()))) {
      const svg = renderSvg(sheet)
      const ids = [...svg.matchAll(/ id="([^"]*)"/gu)].map(([, id]) => id)
      expect(new Set(ids).size).toBe(ids.length)
      const groups = [...svg.matchAll(/<g id="([^"]+)" data-layer="([^"]+)">/gu)]
      for (const [, id = '', layer = ''] of groups) expect(id === layer || id.startsWith(`${layer}.`)).toBe(true)
      const run = flattenSheet(sheet).marks.map(({ layer }) => LAYERS[layer].name)
      expect(groups.map(([, , layer]) => layer)).toEqual(run.filter((name, index) => name !== run[index - 1]))
    }
  })

  test('every hatch is a pattern that is there, and its lines fall on those of the PDF', () => {
    const sheets = houses.flatMap((make) => drawPacket(packetInput(make())))
    let looked = 0
    for (const sheet of sheets) {
      const svg = renderSvg(sheet)
      const patterns = new Map(
        [
          ...svg.matchAll(
            /<pattern id="([^"]+)".*? width="([^"]+)".*? patternTransform="rotate\(([^)]+)\) translate\(\S+ ([^)]+)\)"><path d="M0 (\S+) /gu,
          ),
        ].map(
          ([, id = '', width, turn, shift, line]) =>
            [
              id,
              { gap: Number(width), turn: (Number(turn) * Math.PI) / 180, at: Number(shift) + Number(line) },
            ] as const,
        ),
      )
      const used = [...svg.matchAll(/fill="url\(#([^"]+)\)"/gu)].map(([, id = '']) => id)
      expect(new Set(used)).toEqual(new Set(patterns.keys()))
      const hatches = flattenSheet(sheet).marks.flatMap((mark) => (mark.kind === 'hatch' ? [mark] : []))
      expect(used.length).toBe(hatches.length)
      for (const [index, mark] of hatches.entries()) {
        const pattern = patterns.get(used[index] ?? '')
        if (pattern === undefined) throw new Error('no pattern')
        for (const point of hatchLines(mark.points, { ...mark, cross: false }).flat()) {
          // In the frame of the pattern a line lies a whole number of gaps beside its own.
          const across = -point.x * Math.sin(pattern.turn) + point.y * Math.cos(pattern.turn) - pattern.at
          expect(Math.abs(across / pattern.gap - Math.round(across / pattern.gap))).toBeLessThan(1e-6)
          looked += 1
        }
      }
    }
    expect(looked).toBeGreaterThan(100)
  })

  test('tells what it shows', () => {
    const roof = drawPacket(packetInput(microHouse())).find(({ id }) => id === 'A-101')
    if (roof === undefined) throw new Error('no roof plan')
    const svg = renderSvg(roof)
    expect(svg).toContain('role="img" aria-labelledby="sheet-title sheet-desc"')
    const desc = /<desc id="sheet-desc">([^<]*)</u.exec(svg)?.[1] ?? ''
    expect(desc.replaceAll('&quot;', '"')).toMatch(
      /^Roof plan: \S+, scale .*\. Plan of roof plane \S+, 40'-0" along the eave and \d+'-.*" up the slope, with \d+ modules on \d+ rails with \d+ mounts, /u,
    )
  })

  test('tells of what is drawn on the paper too', () => {
    const sheets = drawPacket({ ...packetInput(microHouse()), threeLine: true })
    const descOf = (id: string): string => {
      const sheet = sheets.find((each) => each.id === id)
      return sheet === undefined ? '' : (/<desc id="sheet-desc">([^<]*)</u.exec(renderSvg(sheet))?.[1] ?? '')
    }
    expect(descOf('E-601')).toMatch(
      /^One-line diagram, not to scale\. One-line diagram, not to scale: 2 sources .*\.$/u,
    )
    expect(descOf('E-604')).toMatch(/^Labels and placards, .*\. Wall with the equipment .* AC COMBINER none; .*\.$/u)
    expect(descOf('E-605')).toMatch(/^Three-line diagram, .*\. Three-line diagram, .* from 2 sources .*\.$/u)
    expect(descOf('G-001')).toBe('Cover sheet, not to scale.')
  })

  test('of a hostile project is well-formed and says what was written', () => {
    const title = '</text><script>alert(1)</script> ]]> <!-- & "quoted" \' %s'
    for (const sheet of drawPacket(packetInput({ ...microHouse(), title }))) {
      const svg = renderSvg(sheet)
      expect(XMLValidator.validate(svg)).toBe(true)
      expect(svg).not.toContain('<script')
      // The strip breaks it over lines, between signs; white space aside, all of it is there in one piece.
      const texts = textsOf(new XMLParser({ preserveOrder: true, trimValues: false }).parse(svg))
      expect(texts.join('').replaceAll(/\s/gu, '')).toContain(title.replaceAll(/\s/gu, ''))
    }
  })
})
