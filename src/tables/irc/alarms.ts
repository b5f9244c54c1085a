import type { Source } from '../../worksheet/index.js'

/** Smoke alarms where work with a permit is done in an existing dwelling; work on its outside alone is excepted. */
export const SMOKE_ALARMS: Source = { document: 'IRC', place: 'R314.2.2, R314.3', standing: 'from memory' }

/** Carbon monoxide alarms likewise, where fuel is burnt or a garage opens into the dwelling. */
export const CARBON_MONOXIDE_ALARMS: Source = { document: 'IRC', place: 'R315.2, R315.3', standing: 'from memory' }
