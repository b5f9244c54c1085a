import { describe, expect, it } from 'vitest'
import { requiredLabels } from '../../src/drawings/labels/required-labels.js'
import { storageDiagram } from '../../src/drawings/sheets/one-line-storage.js'
import { takeStorage } from '../../src/materials/take-off/take-storage.js'
import type { TakeOffJob } from '../../src/materials/take-off/take-off-job.js'
import { stepsOf } from '../../src/fieldwork/work-plan/step-rule.js'
import { STEPS_STORAGE, STEPS_STORAGE_TEST } from '../../src/fieldwork/work-plan/steps-storage.js'
import type { PlanSystem } from '../../src/fieldwork/work-plan/plan-system.js'
import { type Primitive } from '../../src/drawings/index.js'
import { drawLeaf, drawLeafWithDevice } from '../../src/drawings/tree/draw-leaf.js'
import { onBus } from '../../src/drawings/tree/draw-panel.js'
import { labelElevation } from '../../src/drawings/sheets/label-elevation.js'
import { sizeStorage, storageHouse, type StorageChange } from '../electrical/storage-house.js'

const labelsOf = (change: StorageChange = {}, edition = 'NEC 2023') => {
  const { result } = sizeStorage(change, edition)
  return requiredLabels(storageHouse(change), result.values)
}

/** Words of the storage on the one-line diagram: figure, list and table. */
function wordsOf(change: StorageChange = {}, edition = 'NEC 2023'): string {
  const { result } = sizeStorage(change, edition)
  return storageDiagram(result.values, () => 'label 9')
    .map((block) => {
      if (block.kind === 'figure')
        return block
          .draw(0, 0, 600)
          .map((each) => (each.kind === 'text' ? each.text : ''))
          .join(' ')
      if (block.kind === 'list') return block.items.join(' ')
      return block.kind === 'table' ? block.rows.flat().join(' ') : block.kind === 'heading' ? block.text : ''
    })
    .join(' ')
}

// Conditions of the label table: 706.7(D) 2017 read, 706.15 since 2020 and 702.7(A): secondary and from memory.
describe('labels of a house with storage', () => {
  const ids = (change?: StorageChange, edition?: string) => labelsOf(change, edition).map(({ id }) => id)

  it('disconnect always; shutdown outside since 2023; sign at the service with backup', () => {
    expect(ids()).toEqual(expect.arrayContaining(['ESS_DISC', 'ESS_SHUTDOWN', 'STANDBY_SIGN']))
    expect(ids({}, 'NEC 2020')).not.toContain('ESS_SHUTDOWN')
    expect(ids({ backup: { kind: 'none' } })).not.toContain('STANDBY_SIGN')
    expect(ids({ backup: { kind: 'none' } })).toContain('ESS_DISC')
  })

  it('none of them without storage', () => {
    const { result } = sizeStorage()
    const { storage: _, ...values } = result.values
    const without = requiredLabels(storageHouse(), values).map(({ id }) => id)
    for (const id of ['ESS_DISC', 'ESS_SHUTDOWN', 'STANDBY_SIGN']) expect(without).not.toContain(id)
  })

  it('words: mandated since 2020, in 2017 the name with lines to fill in; the sign names type and place', () => {
    const text = (id: string, edition?: string) => labelsOf({}, edition).find((label) => label.id === id)?.text
    expect(text('ESS_DISC')).toBe('ENERGY STORAGE SYSTEM DISCONNECT')
    expect(text('ESS_DISC', 'NEC 2017')).toContain('NOMINAL VOLTAGE 240 V')
    expect(text('STANDBY_SIGN')).toContain('ENERGY STORAGE SYSTEM (BATTERY) LOCATION: ATTACHED GARAGE')
    expect(labelsOf().find(({ id }) => id === 'STANDBY_SIGN')?.places).toEqual(['panel:main'])
    expect(text('DIRECTORY')).toContain('INVENTED STORE 13')
  })

  it('the power control label tells what is controlled, and its setting', () => {
    const { distribution } = storageHouse().electrical ?? {}
    const main = { ...distribution?.panels['main'], bus_a: 100, main_a: 100, load_a: 80 }
    const controlled = labelsOf({
      installation: {
        power_control: {
          listed: true,
          setting_a: 60,
          sensors_at: ['main', 'backup'],
          mode: 'busbar',
          qualified_only: true,
          document: 'certificate',
          controls: ['pv'],
        },
      },
      electrical: { distribution: { ...distribution, panels: { ...distribution?.panels, main } } },
    })
    const label = controlled.find(({ id }) => id === 'PCS')
    expect(label?.text).toContain('60 A')
    expect(label?.text).toContain('PHOTOVOLTAIC SYSTEM')
  })
})

describe('storage on the one-line diagram', () => {
  it('shows unit, energy, current, tag, disconnect, breaker, panel, isolating device', () => {
    const words = wordsOf()
    for (const part of [
      '1 x INVENTED STORE 13, 14 kWh IN ALL, 24 A AT 240 V, ATTACHED GARAGE',
      'STORAGE DISCONNECT, 60 A',
      '30 A BREAKER',
      '125 A BUS',
      'ISOLATING DEVICE (MID), 60 A, LISTED',
      'An emergency shutdown of the storage is started',
      'Without the grid the storage carries panel backup',
    ])
      expect(words).toContain(part)
  })

  it('every tag of its conductors stands there once', () => {
    const { result } = sizeStorage({ storage: { count: 2 }, installation: { units_per_circuit: 1 } })
    const tags = result.values.conductors.filter(({ circuits }) => circuits.some((id) => id.startsWith('storage')))
    expect(tags.length).toBeGreaterThan(1)
    const figure = storageDiagram(result.values, () => '').find(({ kind }) => kind === 'figure')
    const texts =
      figure?.kind === 'figure'
        ? figure.draw(0, 0, 600).flatMap((each) => (each.kind === 'text' ? [each.text] : []))
        : []
    for (const { tag } of tags) expect(texts.filter((text) => text === tag)).toHaveLength(1)
  })

  it('what is open stands in its table, and sensors only with a power control system', () => {
    expect(wordsOf({ place: { alarm: undefined as never } })).toContain('NOT STATED')
    expect(wordsOf({ place: { alarm: 'none' } })).toContain('NOT MET')
    expect(wordsOf()).not.toMatch(/\bCT\b/u)
  })
})

describe('storage in the bill and in the work plan', () => {
  const take = (change: StorageChange = {}) => {
    const { result } = sizeStorage(change)
    return takeStorage({ project: storageHouse(change) } as unknown as TakeOffJob, result.values).map(
      ({ item, quantity }) => `${quantity} ${item}`,
    )
  }

  it('units, breakers, disconnect, isolating device, alarm', () => {
    expect(take()).toEqual([
      '1 storage.store13',
      '1 breaker.2p.30a',
      '1 disconnect.storage.60a',
      '1 isolating-device.60a',
      '1 alarm.heat',
    ])
    expect(take({ storage: { count: 2 }, installation: { units_per_circuit: 1, disconnect_at: 'in_unit' } })).toEqual([
      '2 storage.store13',
      '1 breaker.2p.30a',
      '1 breaker.2p.30a',
      '1 isolating-device.60a',
      '1 alarm.heat',
    ])
    // Without a rating it is as large as the device ahead of it, the 60 A of the feeder.
    expect(take({ backup: { isolating_device_a: 100 } })).toContain('1 isolating-device.100a')
    expect(take({ backup: { isolating_device_a: undefined as never } })).toContain('1 isolating-device.60a')
    expect(take({ backup: { kind: 'none' } })).not.toContain('1 isolating-device.60a')
  })

  const steps = (change: StorageChange | undefined) => {
    const values = change === undefined ? undefined : sizeStorage(change).result.values
    const system = { wire: values, edition: 'NEC 2023', wallUnits: false, missing: [] } as unknown as PlanSystem
    return stepsOf([...STEPS_STORAGE, ...STEPS_STORAGE_TEST], system)
  }

  it('is set with cells that are never dead, and commissioned after permission only', () => {
    const all = steps({})
    expect(all.map(({ id }) => id)).toEqual(['storage.place', 'storage.set', 'storage.commission'])
    const set = all.find(({ id }) => id === 'storage.set')
    expect(set?.cautions).toContain('energised-batteries')
    expect(set?.tasks.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['storage.never-dead', 'storage.damaged', 'storage.off']),
    )
    expect(set?.stop).toContain('licensed electrician')
    const commission = all.find(({ id }) => id === 'storage.commission')
    expect(commission?.state).toBe('on_after_permission')
    expect(commission?.tasks.map(({ id }) => id)).toContain('storage.island-test')
    expect(
      steps({ backup: { kind: 'none' } })
        .at(-1)
        ?.tasks.map(({ id }) => id),
    ).not.toContain('storage.island-test')
  })

  it('tells what is open before anything is set, and has no steps without storage', () => {
    const place = steps({ place: { alarm: undefined as never } })[0]
    expect(place?.tasks.some(({ says }) => says.startsWith('open before anything is set'))).toBe(true)
    expect(steps(undefined)).toEqual([])
  })
})

describe('the storage that this project brings', () => {
  const { result } = sizeStorage()
  const node = result.values.distribution.find(({ id }) => id === 'storage')
  if (node === undefined) throw new Error('no storage on the installation')
  const layers = (planned: boolean) => {
    const leaf = { kind: 'source', of: 'storage', node, planned } as const
    const lines = [...drawLeaf(leaf, 200, 100), ...drawLeafWithDevice(leaf, 200, 100), ...onBus(leaf, 200, 100)]
    return new Set(lines.filter(({ kind }) => kind !== 'text').map(({ layer }) => layer))
  }

  it('is not drawn in the grey of what is there already, and one that is there is', () => {
    expect([...layers(false)]).toEqual(['oneLineExisting'])
    expect([...layers(true)]).not.toContain('oneLineExisting')
  })

  it('has its labels on the picture of the wall, each at a piece of its own', () => {
    const labels = labelsOf()
    const picture = labelElevation(labels, result.values)
    const words = picture.kind === 'figure' ? flattenedWords(picture.draw(0, 0, 470)) : []
    // Every number of the list stands on the picture.
    for (const { number, id } of labels) expect(words, id).toContain(String(number))
    expect(words.join(' ')).toMatch(/STORAGE\sDISCONNECT|ESS DISC\./u)
  })
})

function flattenedWords(primitives: readonly Primitive[]): string[] {
  return primitives.flatMap((each) => (each.kind === 'text' ? [each.text] : []))
}
