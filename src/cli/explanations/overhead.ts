import type { Explanations } from './explanation.js'

const ROOFS = { document: 'NEC', place: '230.24', standing: 'from memory' } as const
const WORK = { document: '29 CFR', place: '1910.333(c)(3), 1926 subpart CC', standing: 'from memory' } as const

/** Findings of overhead lines. */
export const OVERHEAD: Explanations = {
  'wire.overhead-not-stated': {
    means: 'The project does not say whether a line passes over or near the roof.',
    rule: 'A service drop that had enough room over the roof can be too near to people and modules. That is the most deadly thing on such a job, and it is looked for first.',
    sources: [ROOFS, WORK],
    fix: 'State each line under site.overhead_lines, or `overhead_lines: none` after somebody has looked.',
  },
  'wire.overhead-unjudged': {
    means: 'A line is stated, but not where a roof plane stands, so its height over that plane cannot be checked.',
    rule: 'A height over a roof needs the place, slope and eave height of the roof.',
    sources: [ROOFS],
    fix: 'State eave_left or its place in site_plan.roof_planes, eave_height_ft and the outline.',
  },
  'wire.overhead-from-memory': {
    means: 'The heights that lines must keep were not read in the code for this program.',
    rule: 'Editions differ and utilities have rules of their own, often stricter.',
    sources: [ROOFS],
    fix: 'Compare with the printed edition and the service handbook of the utility.',
  },
  'wire.overhead-utility-line': {
    means: 'A line that is no service drop, or of more than 1000 V, is not ruled by the electrical code of houses.',
    rule: 'Lines of utilities follow their own safety code, which asks for more room with more voltage.',
    sources: [{ document: 'NEC', place: '90.2', standing: 'from memory' }],
    fix: 'Ask the utility in writing.',
  },
  'wire.overhead-clearance': {
    means: 'A line hangs lower over a roof, modules, the ground, a driveway or a street than the code permits.',
    rule: 'Lines keep 8 ft over roofs, held 3 ft beyond their edges; 3 ft over roofs of 4 in 12 and steeper up to 300 V; 18 in over a short piece of overhang to its mast; over ground 10 to 18 ft by place and voltage. The faces of modules count as a new surface of the roof.',
    sources: [ROOFS],
    fix: 'Have the line raised or moved by the utility, or keep modules away from below it.',
  },
  'wire.overhead-work': {
    means: 'People, ladders or tools on this job come nearer to a line than 10 ft.',
    rule: 'Ten feet up to 50 kV for everybody who is not a qualified line worker; insulation of a service drop is weathered and does not count.',
    sources: [WORK],
    fix: 'Let the utility cut or cover the line for the days of the work, or work elsewhere.',
  },
}
