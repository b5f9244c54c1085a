import * as fc from '../fast-check.js'
import { editions } from '../../src/tables/nec/index.js'
import { nextRatingA } from './tree-evaluator.js'
import { pvOf } from './tree-project.js'
import type { Tree, TreeControl, TreeFeeder, TreePanel, TreeSource, TreeTap } from './tree-model.js'

const one = fc.constantFrom
const maybe = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(value, { nil: undefined, freq: 2 })
const mostly = fc.integer({ min: 0, max: 3 }).map((number) => number > 0)
const breakers = maybe(fc.array(one(15, 20, 30, 40, 50), { maxLength: 6 }))

const panel = (id: string, busA: readonly number[], mainA: fc.Arbitrary<number | undefined>): fc.Arbitrary<TreePanel> =>
  fc.record({
    id: fc.constant(id),
    busA: one(...busA),
    mainA,
    centreFed: mostly.map((atEnd) => !atEnd),
    breakersA: breakers,
    loadA: maybe(fc.integer({ min: 5, max: 110 })),
  })

const methods = one('EMT', 'RMC', 'PVC 40', 'LFNC', 'MC', 'SE')
const metal = one('copper', 'copper', 'aluminum')

const feeder = (
  id: string,
  from: string,
  to: string,
  deviceA: readonly number[],
  sizes: readonly string[],
): fc.Arbitrary<TreeFeeder> =>
  fc.record({
    id: fc.constant(id),
    from: fc.constant(from),
    to: fc.constant(to),
    deviceA: one(...deviceA),
    atOppositeEnd: mostly,
    size: one(...sizes),
    metal,
    method: methods,
    lengthFt: fc.integer({ min: 5, max: 120 }),
    ambientC: fc.constant(30),
  })

const tap = (id: string, on: string): fc.Arbitrary<TreeTap> =>
  fc.record({
    id: fc.constant(id),
    feeder: fc.constant(on),
    farEnd: fc.boolean(),
    size: one('8', '6', '4', '2', '1/0'),
    metal,
    method: maybe(one('EMT', 'IMC', 'PVC 80', 'LFMC', 'MC', 'SE', 'NM', 'UF')),
    lengthFt: one(4, 10, 11, 25, 26, 60),
    ambientC: fc.constant(30),
    endDeviceA: one(15, 20, 40, 60, 70),
    endDevices: one(1, 1, 1, 2),
    loadA: maybe(fc.integer({ min: 5, max: 80 })),
    leavesEnclosure: mostly,
    outdoors: fc.boolean(),
  })

interface Existing {
  readonly kind: TreeSource['kind']
  readonly place: number
  readonly currentA: number
  readonly larger: boolean
  readonly atOppositeEnd: boolean
  readonly parallel: boolean
}

const existing: fc.Arbitrary<Existing> = fc.record({
  kind: one('pv', 'storage', 'generator'),
  place: fc.nat({ max: 9 }),
  currentA: fc.integer({ min: 8, max: 96 }).map((halves) => halves / 2),
  larger: fc.boolean(),
  atOppositeEnd: mostly,
  parallel: fc.boolean(),
})

const control: fc.Arbitrary<TreeControl> = fc.record({
  settingA: fc.integer({ min: 3, max: 20 }).map((tens) => 10 * tens),
  panels: fc.uniqueArray(one('main', 'sub', 'inner'), { minLength: 1, maxLength: 3 }),
  uncontrolled: fc.uniqueArray(one('old0', 'old1', 'old2'), { maxLength: 2 }),
  documented: mostly,
  locked: mostly,
})

const BUSES = [100, 125, 150, 200, 225] as const

/** Up to three panels in a row and one with loads only, with taps, older sources and power control. */
export const randomTree: fc.Arbitrary<Tree> = fc
  .record({
    edition: one(...editions),
    depth: one(1, 2, 3, 3),
    main: panel('main', BUSES, one(100, 125, 150, 175, 200)),
    sub: panel('sub', [60, ...BUSES], maybe(one(60, 70, 100, 125))),
    inner: panel('inner', [60, 70, 100, 125], maybe(one(40, 60, 70))),
    shed: maybe(panel('shed', [60, 100, 125], maybe(one(60, 100)))),
    toSub: feeder('to_sub', 'main', 'sub', [50, 60, 70, 100], ['6', '4', '3', '1', '1/0', '2/0']),
    toInner: feeder('to_inner', 'sub', 'inner', [40, 50, 60, 70], ['8', '6', '4', '2', '1/0']),
    toShed: feeder('to_shed', 'main', 'shed', [40, 60], ['8', '6', '4']),
    tapSub: maybe(tap('tap_sub', 'to_sub')),
    tapInner: maybe(tap('tap_inner', 'to_inner')),
    pv: fc.record({ place: fc.nat({ max: 9 }), inverters: fc.integer({ min: 1, max: 24 }), atOppositeEnd: mostly }),
    existing: fc.array(existing, { maxLength: 3 }),
    control: maybe(control),
  })
  .map(({ depth, pv, existing: others, ...parts }) => {
    const panels = [parts.main, parts.sub, parts.inner].slice(0, depth)
    const withShed = parts.shed === undefined ? [] : [parts.shed]
    const drawnTaps = [...(depth > 1 ? [parts.tapSub] : []), ...(depth > 2 ? [parts.tapInner] : [])]
    const taps = drawnTaps.filter((candidate) => candidate !== undefined)
    const sources = placeSources(panels, taps, pv, others)
    return {
      edition: parts.edition,
      panels: [...panels, ...withShed],
      feeders: [...[parts.toSub, parts.toInner].slice(0, depth - 1), ...(withShed.length > 0 ? [parts.toShed] : [])],
      taps: taps.map((candidate) =>
        sources.some(({ on }) => on === candidate.id)
          ? { ...candidate, endDeviceA: undefined, endDevices: 1, loadA: undefined }
          : candidate,
      ),
      sources,
      control: controlWithin(parts.control, panels, sources),
    }
  })

/** A tap takes one source; what finds it taken goes to the main panel. */
function placeSources(
  panels: readonly TreePanel[],
  taps: readonly TreeTap[],
  pv: { readonly place: number; readonly inverters: number; readonly atOppositeEnd: boolean },
  others: readonly Existing[],
): readonly TreeSource[] {
  const places = [...panels, ...taps].map(({ id }) => id)
  const taken = new Set<string>()
  const placeOf = (number: number, all: readonly string[]): string => {
    const place = all[number % all.length] ?? 'main'
    if (taken.has(place) && taps.some(({ id }) => id === place)) return 'main'
    taken.add(place)
    return place
  }
  const own = pvOf(placeOf(pv.place, places), pv.inverters, pv.atOppositeEnd)
  const rest = others.map(({ place, larger, ...source }, index): TreeSource => {
    const deviceA = nextRatingA(1.25 * source.currentA + (larger ? 5 : 0))
    const parallel = source.kind !== 'generator' || source.parallel
    return {
      ...source,
      id: `old${index}`,
      on: placeOf(place, [...places, 'supply side']),
      deviceA,
      firstDevicesA: [deviceA],
      parallel,
    }
  })
  return [own, ...rest]
}

function controlWithin(
  stated: TreeControl | undefined,
  panels: readonly TreePanel[],
  sources: readonly TreeSource[],
): TreeControl | undefined {
  if (stated === undefined) return undefined
  return {
    ...stated,
    panels: stated.panels.filter((id) => id === 'main' || panels.some((candidate) => candidate.id === id)),
    uncontrolled: stated.uncontrolled.filter((id) => sources.some((source) => source.id === id)),
  }
}
