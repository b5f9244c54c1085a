import { describe, expect, test } from 'vitest'
import { drawPacket, flattenSheet } from '../../src/drawings/index.js'
import { feetOf } from '../../src/values/index.js'
import { hipHouse, microHouse, packetInput } from './demo-packet.js'

/** What the specification of this project asks: 0.01 in; no source outside of it. */
const NEAR_FT = 0.01 / 12

describe('dimensions of a roof plan', () => {
  test.each([
    ['a rectangle', microHouse],
    ['hip, valley and triangle', hipHouse],
  ])('of %s end exactly at what they measure', (_, make) => {
    const input = packetInput(make(), '11x17', true)
    const { planes, modules } = input.arrangement.values
    let seen = 0
    for (const sheet of drawPacket(input).filter(({ id }) => /^A-10\d$/u.test(id))) {
      const [view] = sheet.viewports
      const plane = Object.values(planes).find(({ id }) => sheet.title.endsWith(`: ${id}`))
      if (view === undefined || plane === undefined) throw new Error('no plan')
      const own = modules.filter(({ roofPlane }) => roofPlane === plane.id)
      const rails = (input.mounts?.values.rails ?? []).filter((rail) => rail.plane === plane.id)
      const mounts = (input.mounts?.values.mounts ?? []).filter((mount) => mount.plane === plane.id)
      const things = plane.keepOuts.flatMap(({ thing, clearanceIn }) =>
        thing.flatMap(({ xFt, yFt }) =>
          [0, clearanceIn, -clearanceIn].map((by) => ({ xFt: xFt + by / 12, yFt: yFt + by / 12 })),
        ),
      )
      const xs = [
        ...[...plane.corners, ...things].map(({ xFt }) => xFt),
        ...own.flatMap(({ xFt, widthFt }) => [xFt, xFt + widthFt]),
        ...rails.flatMap(({ x_in: x, length_in: length }) => [feetOf(x), feetOf(x + length)]),
        ...mounts.map(({ x_in: x }) => feetOf(x)),
      ]
      const ys = [
        ...[...plane.corners, ...things].map(({ yFt }) => yFt),
        ...own.flatMap(({ yFt, heightFt }) => [yFt, yFt + heightFt]),
        ...rails.map(({ y_in: y }) => feetOf(y)),
      ]
      const isAt = (value: number, places: readonly number[]): boolean =>
        places.some((each) => Math.abs(each - value) < NEAR_FT)
      const parts = new Set(flattenSheet(sheet, true).marks.flatMap(({ part }) => (part === undefined ? [] : [part])))
      for (const part of parts) {
        if (part.kind !== 'dimension') continue
        const [from, to] = [part.from, part.to].map(({ x, y }) => ({
          x: (x - view.originPt.x) / view.scalePtPerFt,
          y: (view.originPt.y - y) / view.scalePtPerFt,
        }))
        if (from === undefined || to === undefined) continue
        const isLevel = Math.abs(from.y - to.y) < NEAR_FT
        const isUpright = Math.abs(from.x - to.x) < NEAR_FT
        const found = [from, to].map((point) =>
          isLevel ? isAt(point.x, xs) : isUpright ? isAt(point.y, ys) : isAt(point.x, xs) && isAt(point.y, ys),
        )
        expect([sheet.id, part.text, found]).toEqual([sheet.id, part.text, [true, true]])
        seen += 1
      }
    }
    expect(seen).toBeGreaterThan(12)
  })
})

describe('mounts of a roof plan', () => {
  test('lie where the stage of mounts puts them', () => {
    const input = packetInput(hipHouse(), '11x17', true)
    let seen = 0
    for (const sheet of drawPacket(input).filter(({ id }) => /^A-10\d$/u.test(id))) {
      const [view] = sheet.viewports
      if (view === undefined) throw new Error('no plan')
      const wanted = (input.mounts?.values.mounts ?? []).filter(({ plane }) => sheet.title.endsWith(`: ${plane}`))
      const drawn = flattenSheet(sheet, true).marks.flatMap((mark) =>
        mark.kind === 'circle' && mark.layer === 'mount'
          ? [
              {
                xIn: ((mark.center.x - view.originPt.x) / view.scalePtPerFt) * 12,
                yIn: ((view.originPt.y - mark.center.y) / view.scalePtPerFt) * 12,
              },
            ]
          : [],
      )
      expect(drawn).toHaveLength(wanted.length)
      for (const { x_in: x, y_in: y } of wanted)
        expect(drawn.filter(({ xIn, yIn }) => Math.hypot(xIn - x, yIn - y) < 0.01)).toHaveLength(1)
      seen += drawn.length
    }
    expect(seen).toBe(input.mounts?.values.mounts.length)
  })
})
