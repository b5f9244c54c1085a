import { shownDocument, type Job } from '../system/index.js'
import { STORAGE_SOURCE, storageOf } from '../storage/index.js'
import { PV_SOURCE, type PowerControlNode } from './tree.js'

/** The power control system as stated; it counts only with the document that shows its listing and a locked setting. */
export function buildPowerControl(job: Job): PowerControlNode | undefined {
  const stated = job.electrical.power_control
  if (stated === undefined) return ofStorage(job)
  const shown = shownDocument(job, stated.document) !== undefined
  return {
    settingA: stated.setting_a,
    panels: stated.panels,
    uncontrolled: stated.uncontrolled ?? [],
    fault: !shown
      ? 'no dated document under documents shows that it is listed as a power control system'
      : stated.locked_setting === true
        ? undefined
        : 'its setting is not stated to be locked for all but qualified persons',
  }
}

/** The power control system of the storage; whatever it is not said to control counts as not controlled. */
function ofStorage(job: Job): PowerControlNode | undefined {
  const system = storageOf(job)
  const stated = system?.stated.installation?.power_control
  if (stated === undefined) return undefined
  const controlled = new Set([STORAGE_SOURCE, ...(stated.controls ?? [])])
  const others = [PV_SOURCE, ...Object.keys(job.electrical.distribution?.sources ?? {})]
  return {
    settingA: stated.setting_a,
    panels: stated.sensors_at ?? [],
    uncontrolled: others.filter((id) => !controlled.has(id)),
    fault: !stated.listed
      ? 'it is not listed as a power control system'
      : shownDocument(job, stated.document) === undefined
        ? 'no dated document under documents shows its listing and its setting'
        : stated.mode !== 'busbar'
          ? stated.mode === undefined
            ? 'what its setting limits is not stated'
            : `its setting limits the ${stated.mode === 'grid_import' ? 'draw from the grid' : 'export'}, not the current of the busbar`
          : stated.qualified_only === true
            ? undefined
            : 'its setting is not stated to be locked for all but qualified persons',
  }
}
