import { describe, expect, test } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { hipHouse, microHouse, packetInput } from './demo-packet.js'
import { DRAWN_HOUSES } from './drawn-houses.js'
import {
  drawnDimensions,
  feetOf,
  inDrawing,
  ptPerFt,
  readPacket,
  sheetOf,
  tableOf,
  type ReadSheet,
} from './read-sheet.js'

const HEIGHTS = ['Rails', 'Up the slope from the eave', 'Above the eave', 'Above the ground']
const THINGS = ['Thing', 'From the left end, up from the eave', 'Stays free, nearest module']
const eighth = (ft: number): number => Math.round(ft * 96) / 96

/** A table on whatever sheet has it, its cells by row. */
function findTable(sheets: readonly ReadSheet[], headings: readonly string[], under: string): string[][] {
  return sheets
    .filter(({ said }) => said.some(({ text }) => text === under))
    .flatMap((read) => tableOf(read, headings, under))
}

const named = (project: Project, plane: string, height: number | undefined): Project => {
  const { eave_height_ft: _, ...stated } = project.roof_planes[plane]!
  const changed = { ...stated, ...(height === undefined ? {} : { eave_height_ft: height }) }
  return { ...project, roof_planes: { ...project.roof_planes, [plane]: changed } }
}

describe.each([
  ['a rectangle', microHouse, 'south', 9.5],
  ['a hip', hipHouse, 'south', 10],
  ['an eave of unknown height', hipHouse, 'east', undefined],
] as const)('heights of rails on %s', (_, make, plane, ground) => {
  const project = named(make(), plane, ground)
  const input = packetInput(project)
  const sheets = readPacket(input)
  const rows = findTable(sheets, HEIGHTS, `Heights of the rails, roof plane ${plane}`)
  const rails = input.mounts?.values.rails.filter((rail) => rail.plane === plane) ?? []

  test('every rail stands once, with its way up the slope and its height by the pitch', () => {
    const names = rows.flatMap(([cell = '']) => cell.replaceAll(' ', '').split(','))
    expect(names.toSorted()).toEqual(rails.map(({ id }) => id.replace(`${plane}.`, '')).toSorted())
    // 5 or 6 in 12: rise over the length of the slope, by Pythagoras.
    const pitch = project.roof_planes[plane]?.pitch_in_12 ?? 0
    const rise = pitch / Math.hypot(12, pitch)
    for (const [cell = '', along = '', up = '', above = ''] of rows) {
      const rail = rails.find(({ id }) =>
        cell
          .replaceAll(' ', '')
          .split(',')
          .includes(id.replace(`${plane}.`, '')),
      )!
      expect(feetOf(along)).toBeCloseTo(eighth(rail.y_in / 12), 6)
      expect(feetOf(up)).toBeCloseTo(eighth((rail.y_in / 12) * rise), 6)
      if (ground === undefined) expect(above).toBe('not stated')
      else expect(feetOf(above)).toBeCloseTo(eighth(ground + (rail.y_in / 12) * rise), 6)
    }
  })

  test('the plan dimensions them from the eave, one after the other', () => {
    const id = { south: 'A-101', east: 'A-102' }[plane]
    const read = sheetOf(sheets, id)
    const scale = ptPerFt(read.sheet.scaleNote)
    const { found } = drawnDimensions(read, (said) => inDrawing(read, said.middle))
    const upright = found.filter(({ from, to }) => Math.abs(from.x - to.x) < 0.01)
    const outline = read.paths.find(({ closed, pen }) => closed && pen === 'heavy')!
    const eave = Math.max(...outline.points.map(({ y }) => y))
    const heights = [0, ...new Set(rails.map(({ y_in: y }) => y / 12))].toSorted((a, b) => a - b)
    const steps = heights.slice(1).map((to, index) => [heights[index]!, to] as const)
    const drawn = steps.filter(([low, high]) =>
      upright.some(({ from, to }) => {
        const ends = [(eave - from.y) / scale, (eave - to.y) / scale].toSorted((a, b) => a - b)
        return Math.abs(ends[0]! - low) < 0.01 && Math.abs(ends[1]! - high) < 0.01
      }),
    )
    // The first step starts at the eave: without it nothing places the array.
    expect(drawn).toContain(steps[0])
    // Words that have no room are left out; the table has them.
    expect(drawn.length).toBeGreaterThanOrEqual(steps.length - 1)
  })
})

describe('things on the roof', () => {
  const make = DRAWN_HOUSES.find(([name]) => name === 'crowded lot 41')![1]
  const input = packetInput(make())
  const sheets = readPacket(input)
  const read = sheetOf(sheets, 'A-101')
  const scale = ptPerFt(read.sheet.scaleNote)
  const outline = read.paths.find(({ closed, pen }) => closed && pen === 'heavy')!.points
  const [left, right] = [Math.min(...outline.map(({ x }) => x)), Math.max(...outline.map(({ x }) => x))]
  const [top, low] = [Math.min(...outline.map(({ y }) => y)), Math.max(...outline.map(({ y }) => y))]
  const stated = Object.entries(input.project.roof_planes['south']?.obstructions ?? {})

  test('each has its place, its size, what stays free and how far the nearest module is', () => {
    const rows = findTable(sheets, THINGS, 'Things on roof plane south')
    expect(rows).toHaveLength(stated.length)
    for (const [id, box] of stated) {
      const row = rows.find(([cell = '']) => cell.startsWith(id.replaceAll('_', ' ')))
      const [size = '', place = '', free = ''] = row ?? []
      expect(
        size
          .replace(/^[^,]*, /u, '')
          .split(' by ')
          .map(feetOf),
      ).toEqual([box.width_ft, box.length_ft])
      expect(place.split(', ').map(feetOf)).toEqual([box.x_ft, box.y_ft])
      const { modules } = input.arrangement.values
      const apart = modules.map(({ xFt, yFt, widthFt, heightFt }) => {
        const across = Math.max(xFt - box.x_ft - box.width_ft, box.x_ft - xFt - widthFt, 0)
        const up = Math.max(yFt - box.y_ft - box.length_ft, box.y_ft - yFt - heightFt, 0)
        return Math.hypot(across, up)
      })
      expect(free.startsWith(box.clearance_in === undefined ? 'none stated; ' : `${box.clearance_in}" kept; `)).toBe(
        true,
      )
      const told = /(?:; )(.*") to /u.exec(free)?.[1] ?? ''
      expect(Math.abs(feetOf(told) - Math.min(...apart))).toBeLessThan(1 / 96)
    }
  })

  test('each is dimensioned from the nearest edges that no module hides', () => {
    const { found } = drawnDimensions(read, (said) => inDrawing(read, said.middle))
    for (const [, box] of stated) {
      const [x, y] = [left + (box.x_ft + box.width_ft / 2) * scale, low - (box.y_ft + box.length_ft / 2) * scale]
      const up = found.filter(({ from, to }) => Math.abs(from.x - x) < 0.05 && Math.abs(to.x - x) < 0.05)
      expect(up.map(({ from, to }) => Math.min(from.y, to.y))).toEqual([expect.closeTo(top, 1)])
      const across = found.filter(({ from, to }) => Math.abs(from.y - y) < 0.05 && Math.abs(to.y - y) < 0.05)
      const ends = across.map(({ from, to }) => [Math.min(from.x, to.x), Math.max(from.x, to.x)])
      expect(ends.some(([a, b]) => Math.abs(a! - left) < 0.05 || Math.abs(b! - right) < 0.05)).toBe(true)
    }
  })
})
