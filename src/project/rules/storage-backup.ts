import type { Storage } from '../project-types.generated.js'
import type { Report } from './rule.js'

/** What the battery carries in an outage, stated once and without contradictions. */
export function checkStorageBackup({ backup }: Storage, report: Report): void {
  if (backup === undefined) return
  const path = ['storage', 'backup']
  const { essential, loads, kind } = backup
  if (essential !== undefined && loads !== undefined)
    report([...path, 'essential'], 'loads stand beside it; keep the sum or the list', 'key')
  if (kind !== 'none' && essential === undefined && loads === undefined)
    report([...path, 'essential'], 'missing; state the essential loads, here or one by one under loads', 'parent')
  if (essential !== undefined) {
    const { avg_w: mean, peak_w: peak, surge_w: surge } = essential
    if (mean > peak)
      report([...path, 'essential', 'avg_w'], `${mean} W is more than peak_w ${peak} W; are the two swapped?`)
    if (surge !== undefined && surge < peak)
      report([...path, 'essential', 'surge_w'], `${surge} W is less than peak_w ${peak} W; a start adds to what runs`)
  }
  for (const [id, load] of Object.entries(loads ?? {})) {
    const at = [...path, 'loads', id]
    const { from_hour: from, to_hour: to, hours_per_day: hours, surge_w: surge, w } = load
    if ((from === undefined) !== (to === undefined)) {
      const [given, missing] = from === undefined ? ['to_hour', 'from_hour'] : ['from_hour', 'to_hour']
      report([...at, missing], `missing; ${given} is used only together with it: give both or none`, 'parent')
    } else if (from !== undefined && hours !== undefined)
      report([...at, 'hours_per_day'], 'from_hour and to_hour stand beside it; keep one of the two', 'key')
    if (surge !== undefined && surge < w)
      report([...at, 'surge_w'], `${surge} W is less than w ${w} W; are the two swapped?`)
  }
}
