import { listModuleGroups, type Project } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import { cellRiseKPerWM2, installedNoctC } from '../../yield/index.js'

/**
 * Temperature of the cells from that of the air and the light, deg C; of the hottest array.
 *
 * @throws StageError when a module states no nominal operating cell temperature.
 * @source definition of NOCT (800 W/m2, 20 deg C air, 1 m/s), with the standoff of the array
 */
export function cellFromAir(project: Project, airC: number, irradianceWM2: number): number {
  const cells = listModuleGroups(project).map(({ array, module }) => {
    if (module.noct_c === undefined)
      throw new StageError(
        `equipment.modules.${array.module}.noct_c`,
        'the nominal operating cell temperature is not stated, so that none follows from the air',
        'State it from the data sheet, or measure the back of a module and give --cell-temp',
      )
    const noctC = installedNoctC(module.noct_c, array.mounting ?? 'near_roof', array.standoff_in ?? 0)
    return airC + irradianceWM2 * cellRiseKPerWM2({ kind: 'noct', installedNoctC: noctC }, 1)
  })
  return Math.round(Math.max(...cells) * 10) / 10
}
