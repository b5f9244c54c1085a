import type { PaperName } from '../../src/drawings/index.js'
import type { Project } from '../../src/project/index.js'
import { RandomSource } from '../../src/values/statistics/index.js'
import { hipHouse, longNames, microHouse, noCombiner, stringHouse } from './demo-packet.js'
import { storagePacketHouse } from './storage-packet-house.js'
import { longTree, threeLevels } from './tree-houses.js'

export const PAPERS: readonly PaperName[] = ['11x17', 'letter', 'A3']

/** What of a house is drawn anew: sizes, places and names. The same cases each time. */
interface Draw {
  readonly between: (low: number, high: number) => number
  readonly name: () => string
}

const WORDS = ['Maple', 'Old Mill', 'North-Northwest Featherstonehaugh', 'Ash', 'Carriage House', 'Upper Sampletown']

function drawOf(seed: number): Draw {
  const random = new RandomSource(seed)
  const between = (low: number, high: number): number => Math.round((low + random.uniform() * (high - low)) * 4) / 4
  return { between, name: () => WORDS[Math.floor(random.uniform() * WORDS.length)] ?? 'Maple' }
}

const point = (x: number, y: number) => ({ x_ft: x, y_ft: y })
const box = (x: number, y: number, w: number, h: number) =>
  [point(x, y), point(x + w, y), point(x + w, y + h), point(x, y + h)] as NonNullable<Project['site_plan']>['lot']

function siteOf(base: Project): NonNullable<Project['site_plan']> {
  if (base.site_plan === undefined) throw new Error('the base has no site plan')
  return base.site_plan
}

/** An INVENTED house of one plane whose eave, lot and block of modules are drawn. */
function plainHouse({ between, name }: Draw): Project {
  const base = microHouse()
  const [width, depth] = [between(30, 52), between(15, 24)]
  const columns = Math.floor((width - 9) / 3.76)
  const south = base.arrays['south']
  const plane = base.roof_planes['south']
  if (south === undefined || plane === undefined) throw new Error('the base has no south')
  const [lotWidth, lotDepth] = [between(70, 140), between(90, 180)]
  return microHouse({
    title: `${name()} house (invented)`,
    roof_planes: {
      south: {
        ...plane,
        outline: { shape: 'rectangle', width_ft: width, depth_ft: depth },
        obstructions: {
          plumbing_vent: {
            kind: 'vent',
            x_ft: width - 3,
            y_ft: depth - 4,
            width_ft: 0.5,
            length_ft: 0.5,
            height_ft: 1,
          },
        },
      },
    },
    arrays: {
      south: {
        ...south,
        arrangement: {
          blocks: {
            main: { orientation: 'portrait', rows: depth > 19 ? 2 : 1, columns, x_ft: 4, y_ft: 1.5, gap_in: 0.5 },
          },
        },
      },
    },
    site_plan: {
      ...siteOf(base),
      lot: box(0, 0, lotWidth, lotDepth),
      street: { name: `${name()} Street`, lot_line: Math.round(between(1, 4)) },
      buildings: {
        house: { name: 'House', main: true, corners: box(12, 35, width + 2, 30), height_ft: between(14, 24) },
        shed: { name: `${name()} shed`, corners: box(6, lotDepth - 18, between(8, 16), 10) },
      },
    },
  })
}

/** An INVENTED roof with sixty modules in the shape of an L, on six branches. */
function bigL({ between, name }: Draw): Project {
  const base = microHouse()
  const south = base.arrays['south']
  const plane = base.roof_planes['south']
  if (south === undefined || plane === undefined || base.electrical === undefined) throw new Error('the base is bare')
  return microHouse({
    title: `${name()} barn with sixty modules in an L (invented)`,
    roof_planes: {
      south: { ...plane, outline: { shape: 'rectangle', width_ft: between(58, 66), depth_ft: 34 }, obstructions: {} },
    },
    arrays: {
      south: {
        ...south,
        arrangement: {
          blocks: {
            lower: { orientation: 'portrait', rows: 3, columns: 14, x_ft: 3.5, y_ft: 1.5, gap_in: 0.5 },
            wing: { orientation: 'portrait', rows: 2, columns: 9, x_ft: 3.5, y_ft: 18.75, gap_in: 0.5 },
          },
        },
      },
    },
    electrical: {
      ...base.electrical,
      branches: Object.fromEntries(
        Array.from({ length: 6 }, (_, index) => [`b${index + 1}`, { modules: { south: 10 } }]),
      ),
    },
    site_plan: { ...siteOf(base), lot: box(0, 0, 110, between(120, 200)) },
  })
}

/** An INVENTED hipped house of four planes, three of them with arrays. */
function fourPlanes({ between, name }: Draw): Project {
  const base = hipHouse()
  const width = between(46, 56)
  return {
    ...base,
    title: `${name()} hipped house of four planes (invented)`,
    roof_planes: {
      ...base.roof_planes,
      south: {
        azimuth_deg: 180,
        pitch_in_12: 5,
        edge_clearances: { eave_in: 24 },
        street_side: true,
        outline: { shape: 'hip', width_ft: width, depth_ft: 18, ridge_ft: width - 28 },
      },
      north: {
        azimuth_deg: 0,
        pitch_in_12: 5,
        outline: { shape: 'hip', width_ft: width, depth_ft: 18, ridge_ft: width - 28 },
      },
    },
  }
}

/** An INVENTED lot with trees, chimneys, vents and an overhead service drop. */
function crowded({ between, name }: Draw): Project {
  const base = plainHouse({ between, name })
  const plane = base.roof_planes['south']
  const chimney = (x: number, y: number) =>
    ({ kind: 'chimney', x_ft: x, y_ft: y, width_ft: 1, length_ft: 2, height_ft: 4, serves_appliance: false }) as const
  if (plane === undefined) throw new Error('the base has no south')
  return {
    ...base,
    title: `${name()} lot with trees and a service drop (invented)`,
    site: {
      ...base.site,
      obstacles: {
        old_oak: { at: point(between(4, 60), between(4, 12)), width_ft: between(12, 26), height_ft: 31 },
        two_maples_at_the_fence: { at: point(between(4, 60), between(70, 84)), width_ft: 14, height_ft: 24 },
        garden_wall: { at: point(between(30, 50), 20), width_ft: 1, length_ft: 14, height_ft: 6 },
      },
      overhead_lines: {
        drop: {
          kind: 'service_drop',
          cable: 'multiplex',
          to_ground_v: 120,
          between_v: 240,
          sag_ft: 2,
          points: [
            { x_ft: between(-4, 4), y_ft: between(-4, 4), height_ft: 23 },
            { x_ft: 14, y_ft: between(36, 44), height_ft: 17.5 },
          ],
        },
      },
    },
    roof_planes: {
      south: {
        ...plane,
        obstructions: { ...plane.obstructions, chimney_east: chimney(26, 13), chimney_west: chimney(28, 13) },
      },
    },
  }
}

/** INVENTED: two string inverters whose outputs an AC combiner joins. */
function stringsOnCombiner(): Project {
  const [strings, micro] = [stringHouse(), microHouse()]
  const south = strings.arrays['south']
  const { combiner, connection, runs } = micro.electrical ?? {}
  if (south === undefined || combiner === undefined || connection === undefined || runs?.['to_panel'] === undefined)
    throw new Error('the base is bare')
  return {
    ...strings,
    title: 'Two string inverters on a combiner (invented)',
    inverter_units: { garage: { inverter: 's6000' }, shed: { inverter: 's6000' } },
    arrays: {
      south: {
        ...south,
        strings: [
          { modules: 8, inverter_unit: 'garage', input: 1 },
          { modules: 7, inverter_unit: 'shed', input: 1 },
        ],
      },
    },
    electrical: {
      ...strings.electrical,
      combiner,
      connection,
      runs: { ...strings.electrical?.runs, to_panel: runs['to_panel'] },
    },
  }
}

/** Twenty-two houses; on three papers they are sixty-six packets. */
export const DRAWN_HOUSES: readonly (readonly [name: string, make: () => Project])[] = [
  ['demo house', microHouse],
  ['hip and valley', hipHouse],
  ['strings', stringHouse],
  ['strings on a combiner', stringsOnCombiner],
  ['long names', longNames],
  ['no combiner', noCombiner],
  ['three levels', threeLevels],
  ['long tree', longTree],
  ['battery and critical loads', storagePacketHouse],
  ...[11, 12, 13, 14, 15].map((seed) => [`plain ${seed}`, () => plainHouse(drawOf(seed))] as const),
  ...[21, 22].map((seed) => [`sixty in an L ${seed}`, () => bigL(drawOf(seed))] as const),
  ...[31, 32, 33].map((seed) => [`four planes ${seed}`, () => fourPlanes(drawOf(seed))] as const),
  ...[41, 42, 43].map((seed) => [`crowded lot ${seed}`, () => crowded(drawOf(seed))] as const),
]
