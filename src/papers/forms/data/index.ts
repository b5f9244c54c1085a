export { makeSources, SOURCE_STAGES, splitSource, type SourceStage, type Sources } from './read-sources.js'

export type { Found } from './value-at.js'
