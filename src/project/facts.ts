/**
 * The pure face of this folder, for trades: types and what follows from a project without reading anything.
 * `index.ts` has the reading too, which loads the file system and YAML.
 */
export type * from './project-types.generated.js'
export {
  DEEPEST_METER,
  MOST_BILLS,
  MOST_HOUSES,
  MOST_LIST_ROWS,
  MOST_METER_ATTRIBUTES,
  MOST_METER_ELEMENTS,
  MOST_METER_NAMES,
  MOST_READING_ROWS,
  MOST_SHEET_ROWS,
} from './budgets.js'
export type { Authority, ExpeditedLimits } from './authority/authority-types.generated.js'
export { inverterPath, isAcModule, withAcModules } from './ac-modules.js'
export { equipmentNamed } from './equipment-named.js'
export { documentName, documentsOf, type StatedDocument } from './documents.js'
export { arrangementBlocks, moduleCountOf, modulesInBlock, statedModuleCount } from './module-count.js'
export { unlikeStrings, type UnlikeStrings } from './parallel-strings.js'
export { roofText, spaceText, type RoofProject, type SpaceProject } from './roof-project.js'
export { tiltDegOf } from './tilt.js'
export { landingPanel, type LandingPanel } from './landing-panel.js'
export { vicinityFeet } from './vicinity-feet.js'
export { swapEquipment, type Candidate, type Swapped } from './swap-equipment.js'
export { swapStorage, type StorageCandidate } from './swap-storage.js'
