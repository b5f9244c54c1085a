import type { Segments } from '../path.js'
import type { Project } from '../project-types.generated.js'

/** Reports that a rule is broken; `parent` shows the map that should hold a value that is missing. */
export type Report = (segments: Segments, message: string, at?: 'key' | 'value' | 'parent') => void

/** A rule that the schema cannot state, because it binds several values together. */
export type Rule = (project: Project, report: Report) => void
