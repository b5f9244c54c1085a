import { PRACTICE_DEFAULTS, type PracticeKey } from '../../tables/materials/index.js'
import type { TakeOffJob } from './take-off-job.js'

/** What the project states under `materials`, otherwise the habit of the trade, as an assumption. */
export function practiceValue(job: TakeOffJob, key: PracticeKey): number {
  const { value, unit, why, source } = PRACTICE_DEFAULTS[key]
  return job.materials[key] ?? job.worksheet.assume({ path: `materials.${key}`, value, unit, why, source })
}
