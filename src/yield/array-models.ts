import type { CellTemperatureModel } from './cell-temperature.js'
import type { ModuleModel } from './module-model.js'
import type { SeriesCurve } from './series/index.js'
import type { LossSettings, ModelSettings } from './settings.js'

/** How one array is computed. */
export interface ArrayModels {
  readonly settings: ModelSettings
  readonly losses: LossSettings
  readonly module: ModuleModel
  readonly temperature: CellTemperatureModel
  /** Cell above air by another temperature model, K per W/m2, for how much the choice matters. */
  readonly comparedRiseKPerWM2: number
  /** Share of light that snow takes, by step; undefined without snow. */
  readonly snow: Float64Array | undefined
  /** What a module gives with some of its sections, or a string with some of its modules, in the shade; undefined without shade. */
  readonly curve: SeriesCurve | undefined
}
