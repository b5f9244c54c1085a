import type { PowerControlNode, Tree } from '../distribution/index.js'
import { flowThroughPanel, powerControlSource } from '../distribution/index.js'
import { answerStated, compareStated, STORAGE_SOURCE, type StorageCheck } from '../storage/index.js'
import { shownDocument, type Job } from '../system/index.js'
import { deviceAheadA } from './island.js'

const AT = 'storage.installation.power_control'

/**
 * The facts of a power control system of the storage, and busbars that its sensors do not see: its setting within the device
 * that protects them. Those stay judged by their sums with the whole rated currents, the safe side.
 *
 * @source NEC 705.13, 2020: secondary; 2017 and before know none
 */
export function controlRules(job: Job, tree: Tree): StorageCheck[] {
  const stated = job.project.storage?.installation?.power_control
  const node = tree.powerControl
  if (stated === undefined || node === undefined || job.electrical.power_control !== undefined) return []
  const source = powerControlSource(job.edition)
  if (source === undefined)
    return [
      {
        id: 'power-control',
        where: AT,
        says: `${job.edition} knows no power control system, so its setting limits nothing here`,
        verdict: 'fail',
        source: { document: job.edition, place: '705.12', standing: 'read' },
        fix: 'Limit the current by the hardware: smaller devices, fewer units, a larger busbar; or ask for a later edition',
      },
    ]
  const one = (key: string, answer: boolean | undefined, yes: string, no: string, missing: string): StorageCheck =>
    answerStated({
      id: 'power-control',
      where: `${AT}.${key}`,
      answer,
      yes,
      no,
      missing,
      source,
      fix: 'See the certificate and the manual',
    })
  return [
    one(
      'listed',
      stated.listed,
      'the power control system is listed as one',
      'the power control system is not listed as one, so it counts for nothing',
      '',
    ),
    one(
      'document',
      stated.document === undefined ? undefined : shownDocument(job, stated.document) !== undefined,
      'a document shows its listing and setting',
      `${stated.document ?? ''} is no id of a document under documents with title and date, so nothing shows its listing and setting`,
      'no document shows its listing and setting',
    ),
    one(
      'sensors_at',
      stated.sensors_at === undefined ? undefined : true,
      `its sensors watch ${(stated.sensors_at ?? []).join(', ')}`,
      '',
      'which busbars its sensors watch is not stated',
    ),
    one(
      'qualified_only',
      stated.qualified_only,
      'only qualified persons can change its setting',
      'others than qualified persons can change its setting',
      'who can change its setting is not stated',
    ),
    one(
      'mode',
      stated.mode === undefined ? undefined : stated.mode === 'busbar',
      'its setting limits the current of the busbar',
      'its setting limits the exchange with the grid, not the current of the busbar',
      'what its setting limits is not stated',
    ),
    ...unseen(tree, node, source),
  ]
}

function unseen(tree: Tree, { settingA, panels }: PowerControlNode, source: StorageCheck['source']): StorageCheck[] {
  return tree.panels
    .filter(({ id }) => !panels.includes(id))
    .filter((panel) => flowThroughPanel(tree, panel).sources.some(({ id }) => id === STORAGE_SOURCE))
    .flatMap((panel) => {
      const aheadA = deviceAheadA(tree, panel)
      if (aheadA === undefined) return []
      return [
        compareStated({
          id: 'power-control-unseen',
          where: `${AT}.setting_a`,
          what: `setting of the power control system, against the device of ${panel.id} that its sensors do not watch,`,
          value: settingA,
          limit: aheadA,
          unit: 'A',
          relation: '<=',
          source,
          fix: 'Lower the setting, or put sensors there',
        }),
      ]
    })
}
