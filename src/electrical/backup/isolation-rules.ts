import { storageSection } from '../../tables/nec/index.js'
import type { Tree } from '../distribution/index.js'
import { answerStated, compareStated, STORAGE_SOURCE, type StorageCheck, type StorageSystem } from '../storage/index.js'
import type { Job } from '../system/index.js'
import { deviceAheadA, type Island } from './island.js'

/** The device that cuts the house from the grid, and the busbar behind it when the grid is away. */
export function isolationRules(job: Job, system: StorageSystem, tree: Tree, island: Island): StorageCheck[] {
  const { edition } = job
  const { backup } = system.stated
  const { panel, sources, devicesA } = island
  const source = storageSection(edition, 'isolatingDevice')
  const aheadA = deviceAheadA(tree, panel)
  const whole = backup?.kind === 'whole_house'
  return [
    answerStated({
      id: 'isolating-device',
      where: 'storage.backup.isolating_device_listed',
      answer: backup?.isolating_device_listed,
      yes: 'the device that cuts the house from the grid is listed for it',
      no: 'the device that cuts the house from the grid is not listed for it',
      missing: 'whether the device that cuts the house from the grid is listed for it is not stated',
      source,
      fix: 'Use a listed microgrid interconnect device or transfer switch; it keeps the storage from feeding the lines of the utility',
    }),
    ...(aheadA === undefined
      ? [
          {
            id: 'isolating-device-rating',
            where: panel.where,
            says: 'the device ahead of the backed-up panel is not stated, so the isolating device was not held against it',
            verdict: 'not_stated',
            source,
            fix: 'State the main of the panel, or the breaker of its feeder',
          } as const,
        ]
      : [
          compareStated({
            id: 'isolating-device-rating',
            where: 'storage.backup.isolating_device_a',
            what: 'rating of the isolating device, against the device ahead of it,',
            value: backup?.isolating_device_a,
            limit: aheadA,
            unit: 'A',
            relation: '>=',
            source,
            fix: 'Use a larger one, or a smaller breaker ahead of it',
          }),
        ]),
    ...(whole && backup.isolating_device_service_rated !== undefined
      ? [
          answerStated({
            id: 'isolating-device-service',
            where: 'storage.backup.isolating_device_service_rated',
            answer: backup.isolating_device_service_rated,
            yes: 'the isolating device ahead of the main disconnect is rated as service equipment',
            no: 'the isolating device ahead of the main disconnect is not rated as service equipment',
            missing: '',
            source: { document: 'NEC', place: '230.66', standing: 'from memory' },
            fix: 'Use one that is, or put it behind the main disconnect',
          }),
        ]
      : []),
    answerStated({
      id: 'storage-in-island',
      where: 'storage.installation.at',
      answer: system.unit.coupling === 'dc' || sources.some(({ id }) => id === STORAGE_SOURCE),
      yes: 'the storage lands behind the isolating device',
      no: `the storage does not land on ${panel.id} or below it, so it cannot carry that panel`,
      missing: '',
      source: storageSection(edition, 'transfer'),
      fix: 'Land it on the backed-up panel',
    }),
    compareStated({
      id: 'island-busbar',
      where: `${panel.where}.bus_a`,
      what: `without the grid: devices of all sources on ${panel.id}`,
      value: devicesA,
      limit: panel.busA,
      unit: 'A',
      relation: '<=',
      source: storageSection(edition, 'transfer'),
      fix: 'Use a panel with a larger busbar, or land some of the PV ahead of the isolating device',
    }),
  ]
}
