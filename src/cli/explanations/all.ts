import { AUDIT } from './audit.js'
import { APPLICATION } from './application.js'
import { CLIMATE } from './climate.js'
import { CONNECTION } from './connection.js'
import { DISTRIBUTION } from './distribution.js'
import { DC_DEVICES } from './dc-devices.js'
import { EQUIPMENT } from './equipment.js'
import type { Explanations } from './explanation.js'
import { FLEET } from './fleet.js'
import { FORMS } from './forms.js'
import { HANDOVER } from './handover.js'
import { LOADS } from './loads.js'
import { MADE_UP } from './made-up.js'
import { MATERIALS } from './materials.js'
import { MONEY } from './money.js'
import { MOUNTS } from './mounts.js'
import { OUTPUT } from './output.js'
import { OVERHEAD } from './overhead.js'
import { PERMIT } from './permit.js'
import { PROPOSAL } from './proposal.js'
import { RAFTERS } from './rafters.js'
import { RATES } from './rates.js'
import { ROOF } from './roof.js'
import { SCENE } from './scene.js'
import { SEISMIC } from './seismic.js'
import { SNOW } from './snow.js'
import { STORAGE_WIRING } from './storage-wiring.js'
import { STORAGE } from './storage.js'
import { STRUCTURE } from './structure.js'
import { VERIFY } from './verify.js'
import { WIRE } from './wire.js'
import { WIRING_METHODS } from './wiring-methods.js'
import { YIELD } from './yield.js'

/** Every finding id that this program can print, in the order of the job. A new finding gets its text here. */
export const EXPLANATIONS: Explanations = {
  ...MADE_UP,
  ...CLIMATE,
  ...EQUIPMENT,
  ...ROOF,
  ...YIELD,
  ...SCENE,
  ...WIRE,
  ...OVERHEAD,
  ...DC_DEVICES,
  ...WIRING_METHODS,
  ...CONNECTION,
  ...DISTRIBUTION,
  ...STORAGE_WIRING,
  ...LOADS,
  ...STRUCTURE,
  ...RAFTERS,
  ...SNOW,
  ...SEISMIC,
  ...MOUNTS,
  ...PERMIT,
  ...AUDIT,
  ...FORMS,
  ...APPLICATION,
  ...HANDOVER,
  ...MATERIALS,
  ...MONEY,
  ...RATES,
  ...STORAGE,
  ...PROPOSAL,
  ...OUTPUT,
  ...FLEET,
  ...VERIFY,
}
