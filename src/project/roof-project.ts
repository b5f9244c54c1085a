import type { Project } from './project-types.generated.js'

/** Parts of a project that decide where its modules lie and what holds them. */
const ROOF_PARTS = ['codes', 'structure', 'roof_planes', 'roof_access', 'arrays', 'equipment'] as const

/** What decides where modules lie and what holds them: nothing of the place, the wiring or the money. */
export type RoofProject = Pick<Project, (typeof ROOF_PARTS)[number]>

/** A text that is the same for projects with the same roof; where something is worked out from a `RoofProject`, it is known by it. */
export function roofText(project: RoofProject): string {
  return JSON.stringify(ROOF_PARTS.map((part) => project[part] ?? null))
}
