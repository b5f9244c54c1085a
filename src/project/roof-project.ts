import type { Project } from './project-types.generated.js'

/** Parts of a project that decide where its modules lie and what holds them. */
const ROOF_PARTS = ['codes', 'structure', 'roof_planes', 'roof_access', 'arrays', 'equipment'] as const

/** What decides where modules lie and what holds them: nothing of the place, the wiring or the money. */
export type RoofProject = Pick<Project, (typeof ROOF_PARTS)[number]>

/** A text that is the same for projects with the same roof; where something is worked out from a `RoofProject`, it is known by it. */
export function roofText(project: RoofProject): string {
  return JSON.stringify(ROOF_PARTS.map((part) => project[part] ?? null))
}

/** What decides how the house stands in space, with what throws shade: a roof and what is about it, but not where on earth it is. */
export interface SpaceProject extends RoofProject, Pick<Project, 'site_plan' | 'inverter_units'> {
  readonly site: Pick<Project['site'], 'obstacles' | 'horizon'>
}

/** A text that is the same for projects that stand alike in space. */
export function spaceText(project: SpaceProject): string {
  const { site, site_plan: plan, inverter_units: units } = project
  return roofText(project) + JSON.stringify([plan, units, site.obstacles, site.horizon])
}
