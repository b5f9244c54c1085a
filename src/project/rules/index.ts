import { checkStorageWiring } from './storage-wiring.js'
import type { Complaint } from '../explain/complaint.js'
import type { Project } from '../project-types.generated.js'
import { checkArrays } from './arrays.js'
import { checkCommissioning, checkUtilityApplication } from './commissioning.js'
import { checkDistribution } from './distribution.js'
import { checkDcDevices } from './dc-devices.js'
import { checkDocuments } from './documents.js'
import { checkFleet } from './fleet.js'
import { checkFraming } from './framing.js'
import { checkIds } from './ids.js'
import { checkIssues } from './issues.js'
import { checkInverterLoad } from './inverter-load.js'
import { checkInverters } from './inverters.js'
import { checkLumber } from './lumber.js'
import { checkModuleCounts } from './module-counts.js'
import { checkModules } from './modules.js'
import { checkEavePlaces, checkObstacles } from './obstacles.js'
import { checkOverhead } from './overhead.js'
import { checkOutlines } from './outlines.js'
import { checkPanelSpaces } from './panel-spaces.js'
import { checkProposal } from './proposal.js'
import type { Rule } from './rule.js'
import { checkSite } from './site.js'
import { checkSitePlan } from './site-plan.js'
import { checkSlopes } from './slopes.js'
import { checkSnow } from './snow.js'
import { checkStorage } from './storage.js'
import { checkStorageUnits } from './storage-units.js'
import { checkVicinity } from './vicinity.js'
import { checkWeatherFile } from './weather-file.js'

export { checkFleet }

/** A new rule is a line here. */
const RULES: readonly Rule[] = [
  checkSite,
  checkSitePlan,
  checkVicinity,
  checkIssues,
  checkSnow,
  checkWeatherFile,
  checkLumber,
  checkFraming,
  checkSlopes,
  checkOutlines,
  checkObstacles,
  checkEavePlaces,
  checkOverhead,
  checkIds,
  checkDistribution,
  checkStorageWiring,
  checkPanelSpaces,
  checkDocuments,
  checkArrays,
  checkModuleCounts,
  checkModules,
  checkInverters,
  checkInverterLoad,
  checkDcDevices,
  checkStorageUnits,
  checkStorage,
  checkUtilityApplication,
  checkCommissioning,
  checkProposal,
  checkFleet,
]

/** Rules that look at pieces of equipment by themselves. */
const EQUIPMENT_RULES: readonly Rule[] = [checkModules, checkInverters, checkDcDevices]

/** What is wrong with equipment whose parts are valid by the schema, wherever it is used. */
export function checkEquipment(equipment: Project['equipment']): Complaint[] {
  // The rules look at arrays too, where the project has some.
  return complaintsOf({ arrays: {}, equipment } as unknown as Project, EQUIPMENT_RULES)
}

/** Every rule that a project breaks whose parts are each valid by the schema. */
export function checkRules(project: Project): Complaint[] {
  return complaintsOf(project, RULES)
}

function complaintsOf(project: Project, rules: readonly Rule[]): Complaint[] {
  const complaints: Complaint[] = []
  for (const rule of rules) {
    rule(project, (segments, message, at = 'value') => complaints.push({ segments, at, message }))
  }
  return complaints
}
