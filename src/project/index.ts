export type * from './project-types.generated.js'
export type { Authority, ExpeditedLimits } from './authority/authority-types.generated.js'
export { formatCodeFrame } from './code-frame.js'
export type { Complaint } from './explain/complaint.js'
export { inverterPath, isAcModule, withAcModules } from './ac-modules.js'
export { documentName, documentsOf, type StatedDocument } from './documents.js'
export { pathTrouble, takesNumber } from './override.js'
export { readFleetPart, type ExtraColumns } from './fleet-part.js'
export { didYouMean, nearest } from './did-you-mean.js'
export {
  addEquipment,
  entriesOfTable,
  entryOfSettings,
  EQUIPMENT_GROUPS,
  EQUIPMENT_KINDS,
  readColumns,
  readEquipment,
  readSettings,
  type AddedEquipment,
  type ComparedEntry,
  type EquipmentEntry,
  type EquipmentKind,
} from './equipment/index.js'
export type { LoadOptions } from './load-options.js'
export { loadProject, type LoadedProject } from './load-project.js'
export type { Location } from './locator.js'
export { arrangementBlocks, moduleCountOf, modulesInBlock } from './module-count.js'
export {
  listModuleGroups,
  lookUp,
  type ModuleGroup,
  type ModuleLevelConversion,
  type ModuleString,
  type StringConversion,
} from './module-groups.js'
export { formatProblem, type Problem } from './problem.js'
export { ProjectError } from './project-error.js'
export {
  LARGEST_BASELINE_BYTES,
  LARGEST_DOCUMENT_BYTES,
  LARGEST_JOURNAL_BYTES,
  LARGEST_LIST_BYTES,
  LARGEST_LOGO_BYTES,
  LARGEST_METER_BYTES,
  LARGEST_RESULT_BYTES,
  LARGEST_SHEETS_BYTES,
  LARGEST_TABLE_BYTES,
  LARGEST_WEATHER_BYTES,
  LARGEST_YAML_BYTES,
  LONGEST_HOUSE_LINE,
  MOST_BASELINE_MARKS,
  MOST_ENTRIES,
  MOST_HOUSES,
  MOST_RESULT_MARKS,
} from './budgets.js'
export { decodeText, FileTrouble, openRegular, readBytes, TooLarge } from './read-file.js'
export { renameText, type RenamedText } from './rename-text.js'
export { placeText } from './place-text.js'
export type { ReviewComments } from './comments/comments-types.generated.js'
export { checkCommentSheets, readComments, type ReadComments } from './comments/read-comments.js'
export { readAuthority } from './authority/read-authority.js'
export { readNamedBytes, readNamedText } from './named-file.js'
export { readCheckedYaml, type CheckedYaml } from './read-checked-yaml.js'
export { readPlainYaml } from './plain-yaml.js'
export { unitOfPath, withUnit } from './key-unit.js'
export {
  aboutKey,
  completeKey,
  dataAtHand,
  findKeys,
  keyHint,
  listKeys,
  writtenKey,
  type KeyFacts,
  type KnownKey,
  type MovedResult,
} from './keys/index.js'
export { readMain } from './read-main.js'
export { startingFile, type StartingFileOptions } from './starting/starting-file.js'
export { addBlocks, mapsInBraces } from './starting/add-blocks.js'
export { madeUp, stated, type Given } from './starting/given.js'
export { houseOfProject, MADE_UP_PLANE, type StartingHouse, type StartingSite } from './starting/starting-house.js'
export { PART_COMMANDS, PART_NAMES, partLines, type PartName } from './starting/starting-parts.js'
export { shorten } from './words.js'
export type { Candidate } from './swap-equipment.js'
export type { RoofProject, SpaceProject } from './roof-project.js'
export { tiltDegOf } from './tilt.js'
