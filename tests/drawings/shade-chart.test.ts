import { describe, expect, it } from 'vitest'
import { renderSvg, shadeChart } from '../../src/drawings/index.js'
import { flattenSheet } from '../../src/drawings/model/index.js'
import { hiddenParts, hidingOf } from '../../src/drawings/pictures/hidden-runs.js'
import { halfDayDeg, planeEdgeDeg, sunCourses, sunPlace } from '../../src/drawings/pictures/sun-course.js'

const free = (): readonly number[] => Array.from({ length: 12 }, () => 1)
const chart = (latitudeDeg: number, seen = free, from = 'module south.r1c1') =>
  shadeChart({ from, latitudeDeg, tiltDeg: 30, azimuthDeg: latitudeDeg < 0 ? 0 : 180, seen })
const textsOf = (latitudeDeg: number) =>
  flattenSheet(chart(latitudeDeg)).marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []))

describe('the course of the sun', () => {
  it('stands where spherical trigonometry has it at noon, at sunrise and at the pole', () => {
    const noon = sunPlace(40, 23.44, 0)
    expect(noon.elevationDeg).toBeCloseTo(90 - 40 + 23.44, 9)
    expect(noon.azimuthDeg).toBeCloseTo(180, 9)
    expect(sunPlace(-33, 23.44, 0).azimuthDeg).toBeCloseTo(0, 9)
    expect(sunPlace(10, 23.44, 0).azimuthDeg).toBeCloseTo(0, 9)
    // Rising in the east: the morning has hour angles below 0. cos A = sin delta / cos phi at the horizon.
    const rise = sunPlace(40, 20, -halfDayDeg(40, 20))
    expect(rise.elevationDeg).toBeCloseTo(0, 9)
    expect(Math.cos((rise.azimuthDeg * Math.PI) / 180)).toBeCloseTo(
      Math.sin((20 * Math.PI) / 180) / Math.cos((40 * Math.PI) / 180),
      9,
    )
    expect(rise.azimuthDeg).toBeLessThan(90)
    expect(sunPlace(90, 15, 77).elevationDeg).toBeCloseTo(15, 9)
    expect([halfDayDeg(70, 23), halfDayDeg(70, -23), halfDayDeg(0, 12)]).toEqual([180, 0, 90])
  })

  it('takes the 21st of each month: solstices and equinoxes, and two months a line within 1 degree', () => {
    const courses = sunCourses()
    expect(courses.map(({ name }) => name)).toEqual([
      'Jun',
      'May Jul',
      'Apr Aug',
      'Mar Sep',
      'Feb Oct',
      'Jan Nov',
      'Dec',
    ])
    // Declinations of the 21st from almanacs, to half a degree: 23.4, 20.3, 11.9, 0.5, -10.7, -20.0, -23.4.
    for (const [index, expected] of [23.44, 20.3, 11.9, 0.5, -10.7, -20, -23.44].entries()) {
      expect(Math.abs(courses[index]!.declinationDeg - expected)).toBeLessThan(0.5)
    }
  })

  it('knows the edge of a plane: the direction lies in the plane', () => {
    expect(planeEdgeDeg(30, 180, 0)).toBeCloseTo(30, 9)
    expect(planeEdgeDeg(30, 180, 180)).toBeCloseTo(-30, 9)
    expect(planeEdgeDeg(30, 180, 90)).toBeCloseTo(0, 9)
    expect(planeEdgeDeg(90, 180, 0)).toBeCloseTo(90, 9)
    for (const azimuthDeg of [10, 100, 300]) {
      const [edge, turn] = [planeEdgeDeg(40, 200, azimuthDeg), azimuthDeg - 200].map((deg) => (deg * Math.PI) / 180)
      const tilt = (40 * Math.PI) / 180
      expect(Math.sin(tilt) * Math.cos(edge!) * Math.cos(turn!) + Math.cos(tilt) * Math.sin(edge!)).toBeCloseTo(0, 9)
    }
  })
})

describe('parts that hide the sky', () => {
  it('have the outline of the thing, to a column and a twentieth of a degree', () => {
    const wall = (azimuthDeg: number, elevationDeg: number): number =>
      azimuthDeg > 100 && azimuthDeg < 120 && elevationDeg < 17.3 ? 0 : 1
    const [part, ...others] = hiddenParts(wall, 0, 360)
    expect(others).toEqual([])
    expect(part?.hiding).toBe('all')
    const azimuths = part!.corners.map(([azimuthDeg]) => azimuthDeg)
    expect([Math.min(...azimuths), Math.max(...azimuths)]).toEqual([100, 120])
    const heights = part!.corners.map(([, elevationDeg]) => elevationDeg)
    expect(Math.min(...heights)).toBe(0)
    expect(Math.abs(Math.max(...heights) - 17.3)).toBeLessThan(0.06)
  })

  it('tell kinds above each other apart, and gaps below', () => {
    const tree = (azimuthDeg: number, elevationDeg: number): number => {
      if (azimuthDeg < 40 || azimuthDeg > 50) return 1
      if (elevationDeg < 5) return 0
      return elevationDeg > 10 && elevationDeg < 20 ? 0.4 : 1
    }
    expect(hiddenParts(tree, 0, 360).map(({ hiding }) => hiding)).toEqual(['all', 'most'])
    expect([0, 0.02, 0.3, 0.5, 0.97, 0.98, 1].map(hidingOf)).toEqual([
      'all',
      'all',
      'most',
      'some',
      'some',
      undefined,
      undefined,
    ])
  })
})

describe('the chart', () => {
  it('has south in the middle in the north, and north in the middle in the south', () => {
    for (const [latitudeDeg, name] of [
      [40, '180 S'],
      [-33, '0 N'],
    ] as const) {
      const named = textsOf(latitudeDeg).find(({ text }) => text === name)
      expect((named?.at.x ?? 0) + (named?.widthPt ?? 0) / 2).toBeCloseTo(404, 1)
    }
    const east = (latitudeDeg: number) => textsOf(latitudeDeg).find(({ text }) => text === '90 E')?.at.x ?? Number.NaN
    expect(east(40)).toBeLessThan(404)
    expect(east(-33)).toBeGreaterThan(404)
  })

  it.each([0, 15, 23.44, -10, 66.6, 78, 90, -90, -45])(
    'is whole at latitude %s: all inside the paper, no line leaps',
    (latitudeDeg) => {
      const { marks } = flattenSheet(chart(latitudeDeg))
      for (const mark of marks) {
        const points = mark.kind === 'path' ? mark.points : mark.kind === 'text' ? [mark.at] : []
        for (const { x, y } of points) {
          expect(x >= 0 && x <= 792 && y >= 0 && y <= 520).toBe(true)
        }
        // A course of the sun moves little from point to point, but for the pass near the zenith.
        if (mark.kind !== 'path' || mark.pen !== 'medium' || mark.closed || mark.dash !== 'solid') continue
        for (let index = 1; index < mark.points.length; index += 1) {
          const [before, after] = [mark.points[index - 1]!, mark.points[index]!]
          if (before.y < 58 + 5 * 4.2) continue
          expect(Math.abs(after.x - before.x)).toBeLessThan(60)
        }
      }
      expect(renderSvg(chart(latitudeDeg))).not.toMatch(/NaN|undefined|Infinity/u)
    },
  )

  it('names the months that the sun rises in, and no others', () => {
    const months = (latitudeDeg: number) => new Set(textsOf(latitudeDeg).map(({ text }) => text))
    expect(months(40).has('Dec')).toBe(true)
    expect(months(78).has('Dec')).toBe(false)
    expect(months(78).has('Jun')).toBe(true)
    expect(months(-78).has('Jun')).toBe(false)
  })

  it('is the same to the byte each time, with names escaped', () => {
    const seen = (azimuthDeg: number, elevationDeg: number): readonly number[] =>
      Array.from({ length: 12 }, (_, month) => (azimuthDeg > 200 && elevationDeg < 20 ? (month > 3 ? 0.1 : 0.6) : 1))
    const drawn = () => shadeChart({ from: 'module <a&b>', latitudeDeg: 40, tiltDeg: 30, azimuthDeg: 180, seen })
    expect(renderSvg(drawn())).toBe(renderSvg(drawn()))
    expect(renderSvg(drawn())).toContain('&lt;a&amp;b&gt;')
    expect(renderSvg(drawn())).not.toContain('<a&b>')
  })
})
