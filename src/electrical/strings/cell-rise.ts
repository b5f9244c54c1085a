import type { PvModule } from '../../project/index.js'
import type { Celsius } from '../../values/index.js'
import { practice, type Job } from '../system/index.js'
import { riseFromNoctC } from './hot-voltage.js'

/** Rise of the cells above the air in full sun. */
export function cellRiseC(job: Job, module: PvModule): Celsius {
  if (job.electrical.hot_cell_rise_c !== undefined) return job.electrical.hot_cell_rise_c
  const noct = module.noct_c
  return job.worksheet.assume({
    path: 'electrical.hot_cell_rise_c',
    value: noct === undefined ? 35 : riseFromNoctC(noct),
    unit: 'K',
    why:
      noct === undefined
        ? 'Cells on a roof run about 35 K above the air in full sun'
        : 'From the nominal operating cell temperature, scaled from 800 to 1000 W/m2',
    source: noct === undefined ? practice('') : { document: 'IEC 61215, NOCT', standing: 'from memory' },
  })
}
