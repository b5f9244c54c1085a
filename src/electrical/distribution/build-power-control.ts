import { shownDocument, type Job } from '../system/index.js'
import type { PowerControlNode } from './tree.js'

/** The power control system as stated; it counts only with the document that shows its listing and a locked setting. */
export function buildPowerControl(job: Job): PowerControlNode | undefined {
  const stated = job.electrical.power_control
  if (stated === undefined) return undefined
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
