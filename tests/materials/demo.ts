import type { Materials, Project } from '../../src/project/index.js'
import { sizeWire } from '../../src/electrical/index.js'
import { readPriceList, priceBom, type BomInput, type BomValues, type PriceList } from '../../src/materials/index.js'
import { arrangeModules } from '../../src/roof/index.js'
import { spaceMounts } from '../../src/structure/index.js'
import type { Result } from '../../src/worksheet/index.js'
import { context, microProject } from '../electrical/demo.js'
import { demoProject } from '../structure/demo-house.js'

/** An invented house: one row of modules with an inverter each, on rafters, with one branch and one way down. */
export function house(columns = 6, rows = 1, materials: Materials = {}): Project {
  const roof = demoProject()
  const micro = microProject()
  const array = roof.arrays['south']
  const inverter = micro.equipment.inverters?.['micro']
  const [electric, mechanic] = [micro.equipment.modules?.['m410'], roof.equipment.modules?.['m410']]
  if (array === undefined || inverter === undefined || electric === undefined || mechanic === undefined)
    throw new Error('the demo houses have changed')
  const { modules: _, ...rest } = array
  return {
    ...micro,
    ...roof,
    codes: { ...micro.codes, ...roof.codes },
    document: { date: '2026-03-02' },
    roof_planes: {
      south: { azimuth_deg: 180, tilt_deg: 22, outline: { shape: 'rectangle', width_ft: 48, depth_ft: 16 } },
    },
    arrays: {
      south: {
        ...rest,
        inverter: 'micro',
        arrangement: { blocks: { main: { orientation: 'portrait', rows, columns, x_ft: 4, y_ft: 2.2, gap_in: 0.5 } } },
      },
    },
    equipment: {
      ...roof.equipment,
      ...micro.equipment,
      inverters: { micro: { ...inverter, weight_lb: 2.4 } },
      modules: { m410: { ...electric, ...mechanic } },
    },
    materials,
  }
}

/** The house with the modules that the electrical part needs as well. */
export function inputOf(project: Project): BomInput {
  const arrangement = arrangeModules(project)
  const { modules, planes } = arrangement.values
  return {
    project,
    arrangement,
    mounts: spaceMounts(project, { modules, planes: Object.values(planes) }),
    wire: sizeWire(project, context()),
    labels: [labelNeed('PV_DISC', 1), labelNeed('DIRECTORY', 2)],
  }
}

const labelNeed = (id: string, count: number) => ({
  id,
  count,
  counted: 'one at each place',
  reflective: false,
  look: 'white on black',
  text: id,
})

export function billOf(project: Project, prices?: PriceList): Result<BomValues> {
  return priceBom({ ...inputOf(project), prices })
}

export const lineOf = (values: BomValues, item: string): BomValues['lines'][number] => {
  const line = values.lines.find((each) => each.item === item)
  if (line === undefined)
    throw new Error(`no line ${item}; there are ${values.lines.map((each) => each.item).join(', ')}`)
  return line
}

export const listOf = (items: string, head = ''): PriceList =>
  readPriceList('prices.yaml', `format: gablewatt-prices/1\nsupplier: Invented\n${head}items:\n${items}\n`)

/** Every item of a bill at a price. */
export function priceAll(values: BomValues, usd: (index: number) => number): PriceList {
  const packs = { each: 'each', stick: 'stick', ft: 'foot', hour: 'each' } as const
  return {
    format: 'gablewatt-prices/1',
    supplier: 'Invented',
    items: Object.fromEntries(values.lines.map((line, i) => [line.item, { pack: packs[line.unit], usd: usd(i) }])),
  }
}
