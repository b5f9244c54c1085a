import { describe, expect, test } from 'vitest'
import type { Mark } from '../../src/drawings/index.js'
import type { Disconnect, Project } from '../../src/project/index.js'
import { microHouse, packetInput, stringHouse } from './demo-packet.js'
import { readPacket } from './read-sheet.js'

const marksOf = (project: Project, id = 'E-601'): readonly Mark[] =>
  readPacket(packetInput(project))
    .filter(({ sheet }) => sheet.id.startsWith(id))
    .flatMap(({ marks }) => marks)
const textsOf = (project: Project, id: string): string =>
  marksOf(project, id)
    .flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
    .join(' ')

const withDisconnects = (project: Project, disconnects: Readonly<Record<string, Disconnect>>): Project => ({
  ...project,
  electrical: { ...project.electrical, disconnects },
})

interface FusedSwitch {
  readonly y: number
  readonly fuseX: number
  readonly hingeX: number
  readonly jawX: number
}

const nearest = <T>(list: readonly T[], to: number, of: (each: T) => number): T => {
  const [first] = list.toSorted((a, b) => Math.abs(of(a) - to) - Math.abs(of(b) - to))
  if (first === undefined) throw new Error('a fuse without a switch')
  return first
}

/** Every fuse of the diagram (a box with the wire through it) with the open blade next to it, from its hinge to its jaw. */
function fusedSwitches(marks: readonly Mark[]): FusedSwitch[] {
  const close = (a: number | undefined, b: number) => Math.abs((a ?? Infinity) - b) < 0.1
  return marks.flatMap((mark) => {
    if (mark.kind !== 'rectangle' || mark.width !== 14 || mark.height !== 6) return []
    const [y, fuseX] = [mark.y + 3, mark.x + 7]
    const blades = marks.flatMap((each) =>
      each.kind === 'path' && close(each.points[0]?.y, y - 1) && close(each.points[1]?.y, y - 8) ? [each.points] : [],
    )
    const contacts = marks.flatMap((each) =>
      each.kind === 'circle' && each.radius === 1.5 && each.fill === 'white' && close(each.center.y, y)
        ? [each.center.x]
        : [],
    )
    const [hinge, tip] = nearest(blades, fuseX, (points) => points[0]?.x ?? Infinity)
    const contactAt = (at: { readonly x: number } | undefined) => nearest(contacts, at?.x ?? Infinity, (x) => x)
    return [{ y, fuseX, hingeX: contactAt(hinge), jawX: contactAt(tip) }]
  })
}

const xOf = (marks: readonly Mark[], text: string): number => {
  const found = marks.find((mark) => mark.kind === 'text' && mark.text === text)
  if (found?.kind !== 'text') throw new Error(`no text ${text}`)
  return found.at.x
}

describe('a fused switch is opened ahead of its fuse', () => {
  // NEC 240.40: the disconnecting means stands on the supply side of the fuses. Grid and inverters both feed a PV
  // disconnect; the grid stays live, the inverters stop.
  const fused: Disconnect = { kind: 'pv_system', rating_a: 60, lockable: true, service_rated: true, fused: true }

  test.each([
    ['on the supply side', withDisconnects(stringHouse(), { pv: fused })],
    ['on the load side, module-level inverters', withDisconnects(microHouse(), { pv: fused })],
  ])('%s: from the utility jaw, blade, fuse', (_, project) => {
    const marks = marksOf(project)
    const switches = fusedSwitches(marks)
    expect(switches.length).toBeGreaterThan(0)
    const meterX = xOf(marks, 'METER')
    for (const { fuseX, hingeX, jawX } of switches) {
      expect(jawX).toBeLessThan(meterX)
      expect(hingeX).toBeLessThan(jawX)
      expect(fuseX).toBeLessThan(hingeX)
    }
  })

  test('between strings and inverter: from the modules jaw, blade, fuse', () => {
    const marks = marksOf(
      withDisconnects(stringHouse(), {
        pv: { ...fused, fused: false },
        roof: { kind: 'dc', rating_a: 30, fused: true },
      }),
    )
    const switches = fusedSwitches(marks)
    expect(switches.length).toBeGreaterThan(0)
    for (const { fuseX, hingeX, jawX } of switches) {
      expect(xOf(marks, 'PV')).toBeLessThan(jawX)
      expect(jawX).toBeLessThan(hingeX)
      expect(hingeX).toBeLessThan(fuseX)
    }
  })

  test('no fuse is drawn where none is stated', () => {
    expect(fusedSwitches(marksOf(withDisconnects(microHouse(), { pv: { ...fused, fused: false } })))).toEqual([])
    expect(
      fusedSwitches(marksOf(withDisconnects(stringHouse(), { pv: { ...fused, fused: false, breaker: true } }))),
    ).toEqual([])
  })
})

describe('conductors ahead of the overcurrent device of a supply-side connection', () => {
  test('stand on the diagram, in the schedules and in the calculation', () => {
    const project = stringHouse()
    expect(textsOf(project, 'E-601')).toMatch(/supply-side connection, 6 AWG Cu\s+THWN-2/u)
    const schedules = textsOf(project, 'E-602')
    expect(schedules).toContain('AC supply tap')
    expect(schedules).toMatch(/supply tap\.to device/u)
    expect(textsOf(project, 'E-603')).toContain('supply_tap.to_device.supply_tap')
    expect(textsOf(microHouse(), 'E-602')).not.toContain('supply tap')
  })
})
