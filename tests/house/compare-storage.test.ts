import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { partsPool } from '../../src/cli/parts-pool.js'
import { combinationsOf, compareParts, runHouse, trialHouse, type ComparePartsOptions } from '../../src/house/index.js'
import { readPriceList } from '../../src/materials/index.js'
import { loadProject, type Project } from '../../src/project/index.js'
import { garagePlace } from '../electrical/storage-house.js'

/*
 * No source outside the program tells what its combinations come to: each is held against bill of materials and payback of the same
 * project with its storage written out by hand. The busbar that drops one is 705.12(B) of the NEC, whose own tests have the source.
 */
const EXAMPLES = new URL('../../examples/', import.meta.url).pathname
const loaded = loadProject({ path: `${EXAMPLES}fleet/springfield-whole-job.yaml` })
const battery = loadProject({ path: `${EXAMPLES}fleet/fresno-battery.yaml` }).project
const unit = battery.equipment.storage_units?.['battery10']
const { electrical, ...bare } = loaded.project
const distribution = electrical?.distribution
if (unit === undefined || battery.storage === undefined || electrical === undefined || distribution === undefined)
  throw new Error('the example changed')

const storage: NonNullable<Project['storage']> = {
  ...battery.storage,
  backup: { kind: 'none' },
  installation: {
    at: 'main',
    place_code: 'IRC 2021',
    disconnect_at: 'within_10_ft',
    disconnect: {
      rating_a: 60,
      distance_ft: 4,
      visible: true,
      readily_accessible: true,
      through_wall: false,
      outside: true,
    },
    outside_initiator: true,
    places: {
      garage: {
        ...garagePlace,
        units: 1,
        between_units_ft: 3,
        to_door_or_window_ft: 4,
        to_gas_meter_ft: 10,
        self_closing_door: true,
      },
    },
  },
}
const house: Project = {
  ...bare,
  tariff: battery.tariff!,
  storage,
  equipment: {
    ...bare.equipment,
    storage_units: {
      battery10: unit,
      small: { ...unit, usable_kwh: 6, nameplate_kwh: 6.3, rated_output_a: 12, charge_kw: 3, discharge_kw: 3 },
    },
  },
  electrical: {
    ...electrical,
    distribution: {
      ...distribution,
      panels: { ...distribution.panels, main: { ...distribution.panels['main']!, bus_a: 400, load_a: 60 } },
    },
    runs: {
      ...electrical.runs,
      storage: {
        carries: ['storage'],
        segments: { garage: { location: 'indoors', length_ft: 15, raceway: 'EMT', ambient_c: 35 } },
      },
    },
  },
}
const text = `${readFileSync(`${EXAMPLES}prices.yaml`, 'utf8')}
  storage.battery10: { pack: each, usd: 4000 }
  storage.small: { pack: each, usd: 2500 }
  disconnect.storage: { pack: each, usd: 90 }
  alarm.heat: { pack: each, usd: 40 }
  breaker.2p.25a: { pack: each, usd: 20 }
  breaker.2p.60a: { pack: each, usd: 32 }
`
const prices = { name: 'prices.yaml', text, list: readPriceList('prices.yaml', text) }
const compare = (change: Partial<ComparePartsOptions> = {}, project: Project = house) =>
  compareParts(
    { ...loaded, project },
    {
      modules: ['m410'],
      inverters: [],
      sizes: [],
      storage: ['battery10', 'small'],
      units: [0, 1, 2],
      by: 'npv',
      prices,
      ...change,
    },
  )

/** Bill of materials and payback of a project that was written out by hand. */
async function byHand(own: Partial<Project>) {
  const { installed_cost_usd: _, ...finance } = house.finance ?? {}
  const project = { ...house, finance, materials: { price_list: 'prices.yaml' }, ...own }
  const files = new Map([...(loaded.files ?? []), ['prices.yaml', text]])
  const stages = runHouse(
    { ...loaded, files, project: { ...project, materials: { ...house.materials, ...project.materials } } },
    { wishes: { payTheBom: true } },
  )
  return { bom: (await stages.bom()).values, payback: (await stages.payback()).values }
}

const placed = (units: number): NonNullable<Project['storage']>['installation'] => ({
  ...storage.installation,
  places: { garage: { ...storage.installation!.places!['garage']!, units } },
})

describe('storage among the parts', async () => {
  const { values } = await compare()
  const find = (id: string | null, units: number) =>
    values.options.find((one) => one.storage === id && one.storage_units === units)

  test('is each unit in each number, and none once', () => {
    expect(values.combinations).toBe(5)
    const { options, dropped } = values
    expect(options.length + dropped.length).toBe(5)
    expect([...options, ...dropped].filter((one) => one.storage_units === 0)).toHaveLength(1)
  })

  test.each([
    ['none', null, 0, { ...storage, count: 0 }],
    ['own unit', 'battery10', 1, storage],
    // Bought again for as much a unit as the project states, 6,500 USD for one.
    [
      'own unit twice',
      'battery10',
      2,
      { ...storage, count: 2, installation: placed(2), replacement: { at_warranty_end: true, usd: 13_000 } },
    ],
    // Prices of another unit are those of the list.
    [
      'another unit twice',
      'small',
      2,
      {
        ...storage,
        unit: 'small',
        count: 2,
        installation: placed(2),
        replacement: { at_warranty_end: true, usd: 5000 },
        cost_usd_per_unit: 2500,
      },
    ],
  ] as const)('%s has the figures of the project written out by hand', async (_name, id, units, own) => {
    const { bom, payback } = await byHand({ storage: own as NonNullable<Project['storage']> })
    expect(find(id, units)).toMatchObject({
      price_usd: bom.totals.gross_usd,
      first_year_kwh: payback.first_year_kwh,
      first_year_savings_usd: payback.first_year_savings_usd,
      payback_years: payback.simple_payback.lasting_years,
      npv_usd: payback.npv_usd,
    })
  })

  test('costs and saves more than none', () => {
    expect(find('battery10', 1)!.price_usd).toBeGreaterThan(find(null, 0)!.price_usd + 4000)
    expect(find('battery10', 1)!.first_year_savings_usd).toBeGreaterThan(find(null, 0)!.first_year_savings_usd)
  })
})

describe('storage that does not hold', () => {
  test('is dropped where the busbar does not take it', async () => {
    const main = { ...house.electrical!.distribution!.panels['main']!, bus_a: 200 }
    const { distribution: own } = house.electrical!
    const { values } = await compare(
      {},
      {
        ...house,
        electrical: {
          ...house.electrical!,
          distribution: { ...own!, panels: { ...own!.panels, main } },
        },
      },
    )
    const dropped = values.dropped.find((one) => one.storage === 'battery10' && one.storage_units === 2)
    expect(dropped?.reasons.map(({ id }) => id)).toContain('wire.panel-busbar')
  })

  test('is dropped where nothing is stated of its installation, as it would be free of charge', async () => {
    const { installation: _, ...store } = storage
    const { storage: _run, ...runs } = house.electrical!.runs!
    const unplaced = { ...house, storage: store, electrical: { ...house.electrical!, runs } }
    const { values } = await compare({ storage: ['small'], units: [0, 1] }, unplaced)
    expect(values.options.map((one) => one.storage_units)).toEqual([0])
    expect(values.dropped[0]?.reasons.map(({ id }) => id)).toContain('wire.storage-not-installed')
  })

  test('is refused where the id is not there, or numbers stand without a unit', async () => {
    await expect(compare({ storage: ['constructor'] })).rejects.toThrow(
      "there is no storage unit 'constructor'; the project has battery10, small",
    )
    await expect(compare({ storage: [] })).rejects.toThrow('it is not said of which')
  })

  test('at several places is not spread by the program', async () => {
    const garage = storage.installation!.places!['garage']!
    const installation = { ...storage.installation, places: { garage, wall: { ...garage, units: 1 } } }
    const { values } = await compare(
      { storage: ['battery10'], units: [1] },
      { ...house, storage: { ...storage, count: 2, installation } },
    )
    expect(values.dropped[0]?.reasons[0]?.message).toContain('2 units have places, the system has 1')
  })
})

// Two starts of the built program, and all combinations twice: much beside other tests.
test('worker threads find the same as one thread, in the same order', { timeout: 240_000 }, async () => {
  const modules = Object.fromEntries(
    [410, 411, 412, 413].map((w) => [`m${w}`, { ...house.equipment.modules!['m410']!, pmax_w: w }]),
  )
  const equipment = { ...house.equipment, modules }
  const project = { ...house, equipment, finance: { ...house.finance, years: 2 } }
  const wishes = { modules: Object.keys(modules), inverters: [], sizes: [], storage: ['small'], units: [0, 1, 2] }
  const tryAll = partsPool(combinationsOf(wishes).length)
  if (tryAll === undefined) return
  const told: number[] = []
  const progress = (done: number): void => {
    told.push(done)
  }
  const threads = await compare({ ...wishes, tryAll, progress }, project)
  expect(threads).toEqual(await compare(wishes, project))
  expect(threads.values.combinations).toBe(12)
  expect(told.at(-1)).toBe(11)
})

test('the sky of the site is worked out once for all combinations', async () => {
  const trial = await trialHouse({ input: { ...loaded, project: house }, order: [], prices: prices.list })
  const once = trial.runYield(house, loaded.files)
  expect(trial.runYield(house, loaded.files).steps).toBe(once.steps)
})
