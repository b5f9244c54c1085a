import type { Point } from '../sun/index.js'
import type { Point as PlanePoint } from '../values/index.js'
import { convexParts } from './convex-parts.js'
import { packFaces, type Face } from './faces.js'
import type { Solid } from './solid.js'

/** What a solid is besides its shape. */
export type SolidTraits = Omit<Solid, 'faces' | 'corners' | 'upright'>

/** A surface over the plan: height at a place, `up + perEast east + perNorth north`, ft. */
export interface Sheet {
  readonly up: number
  readonly perEast: number
  readonly perNorth: number
}

export const level = (up: number): Sheet => ({ up, perEast: 0, perNorth: 0 })

export function heightAt({ up, perEast, perNorth }: Sheet, east: number, north: number): number {
  return up + perEast * east + perNorth * north
}

/** The sheet moved up, ft. */
export const raised = (sheet: Sheet, by: number): Sheet => ({ ...sheet, up: sheet.up + by })

/**
 * Solids with plumb sides over a figure of the plan, between two sheets.
 *
 * @param figure Simple, ft: x east and y north.
 * @param base Lower sheet. What of the figure has its top below its base is no solid.
 */
export function prisms(figure: readonly PlanePoint[], base: Sheet, top: Sheet, traits: SolidTraits): Solid[] {
  return convexParts(figure).flatMap((part) => prism(part, base, top, traits) ?? [])
}

function prism(part: readonly PlanePoint[], base: Sheet, top: Sheet, traits: SolidTraits): Solid | undefined {
  const lower = part.map(({ xFt, yFt }): Point => ({ east: xFt, north: yFt, up: heightAt(base, xFt, yFt) }))
  const upper = part.map(({ xFt, yFt }): Point => ({ east: xFt, north: yFt, up: heightAt(top, xFt, yFt) }))
  if (upper.every(({ up }, index) => up <= lower[index]!.up)) return undefined
  const sides = part.map((a, index): Face => {
    const b = part[(index + 1) % part.length]!
    return { normal: { east: b.yFt - a.yFt, north: a.xFt - b.xFt, up: 0 }, through: lower[index]! }
  })
  const [first, highest] = [lower[0]!, upper[0]!]
  const faces: Face[] = [
    ...sides.filter(({ normal }) => Math.hypot(normal.east, normal.north) > 1e-9),
    { normal: { east: -top.perEast, north: -top.perNorth, up: 1 }, through: highest },
    { normal: { east: base.perEast, north: base.perNorth, up: -1 }, through: first },
  ]
  return { ...traits, faces: packFaces(faces), corners: [...lower, ...upper], upright: true }
}
