import type { InverterModel } from './inverter-model.js'
import type { LossSettings, ModelSettings } from './settings.js'

/** What turns DC into AC at the connection. */
export interface Conversion {
  readonly inverters: ReadonlyMap<string, InverterModel>
  readonly settings: ModelSettings
  readonly losses: LossSettings
}
