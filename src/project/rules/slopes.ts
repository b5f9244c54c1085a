import type { Rule } from './rule.js'

/** The slope of a plane is stated once. */
export const checkSlopes: Rule = (project, report) => {
  for (const [id, { tilt_deg, pitch_in_12 }] of Object.entries(project.roof_planes)) {
    if (tilt_deg === undefined && pitch_in_12 === undefined) {
      const message = "missing; state the slope, for example 'tilt_deg: 26.6' or 'pitch_in_12: 6'"
      report(['roof_planes', id, 'tilt_deg'], message, 'parent')
    } else if (tilt_deg !== undefined && pitch_in_12 !== undefined) {
      report(
        ['roof_planes', id, 'pitch_in_12'],
        'tilt_deg and pitch_in_12 both state the slope; keep one of them',
        'key',
      )
    }
  }
}
