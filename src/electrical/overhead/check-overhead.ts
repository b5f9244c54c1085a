import { placeModules } from '../../roof/index.js'
import type { OverheadLine } from '../../project/index.js'
import { buildScene, planToGround, type Scene } from '../../scene/index.js'
import { SAFETY_FIGURES } from '../../tables/fieldwork/index.js'
import { OVERHEAD_RULED_UP_TO_V } from '../../tables/nec/index.js'
import type { Feet } from '../../values/index.js'
import type { Job, OverheadValues } from '../system/index.js'
import { clearancesOverGround } from './ground-clearance.js'
import { askForLines, recordOverhead, tellLine, tellUnjudged } from './tell-overhead.js'
import { clearanceOver, type Clearance } from './roof-clearance.js'
import { hang, type HangingLine } from './span.js'
import { surfacesOf, type Surfaces } from './surfaces.js'
import { workDistances } from './work-distance.js'

/** 10 ft up to 50 kV and 4 in more for each 10 kV above. */
const MORE_FT_PER_KV = 4 / 12 / 10

/**
 * Heights of every overhead line over roofs, modules and ground, and its distance to people at work.
 *
 * @source NEC 230.24 and 29 CFR 1910.333(c)(3), both from memory
 * @limits Supports and sag as stated; wind and ice on the line, windows (230.9) and rails that are swung are not in it.
 */
export function checkOverhead(job: Job): OverheadValues[] {
  const lines = job.project.site.overhead_lines
  if (lines === undefined) askForLines(job)
  if (lines === undefined || lines === 'none') return []
  const placements = placeModules(job.project)
  const scene = buildScene(job.project, placements)
  const surfaces = surfacesOf(job.project, scene)
  return Object.entries(lines).flatMap(([id, line]) => {
    const hanging = hang(line, planToGround(job.project))
    if (surfaces.unknown.length > 0) tellUnjudged(job, id, surfaces.unknown)
    tellLine(job, id, line)
    const found = [
      ...codeValues(job, id, line, hanging, surfaces),
      ...workValues(job, scene, placements, { id, line, hanging }),
    ]
    for (const each of found) recordOverhead(job, each, line)
    return found
  })
}

function codeValues(
  job: Job,
  line: string,
  stated: OverheadLine,
  hanging: HangingLine,
  surfaces: Surfaces,
): OverheadValues[] {
  const over = surfaces.known.flatMap((surface) => {
    const clearance = clearanceOver(stated, hanging, surface)
    return clearance === undefined ? [] : [{ to: surface.path, what: WHAT[surface.kind], clearance }]
  })
  const ground = [...clearancesOverGround(job.project, stated, hanging, surfaces.known)].map(([kind, clearance]) => ({
    to: GROUND[kind].path,
    what: GROUND[kind].what,
    clearance,
  }))
  return [...over, ...ground].map(({ to, what, clearance }) => ({
    id: line,
    to,
    what,
    kind: 'clearance',
    ...figures(clearance),
    section: `230.24${clearance.part}`,
    ruled: stated.between_v <= OVERHEAD_RULED_UP_TO_V,
  }))
}

function workValues(
  job: Job,
  scene: Scene,
  placements: ReturnType<typeof placeModules>,
  { id, line, hanging }: { id: string; line: OverheadLine; hanging: HangingLine },
): OverheadValues[] {
  const requiredFt =
    SAFETY_FIGURES.lineDistanceFt +
    Math.max(0, line.between_v / 1000 - SAFETY_FIGURES.lineDistanceUpToKv) * MORE_FT_PER_KV
  return workDistances(job.project, scene, placements, hanging).map(({ to, what, distanceFt, errorFt }) => ({
    id,
    to,
    what,
    kind: 'work',
    ...figures({ clearanceFt: distanceFt, errorFt, requiredFt }),
    section: '29 CFR 1910.333(c)(3)',
    ruled: true,
  }))
}

/** The safe side of the error decides. */
function figures({ clearanceFt, errorFt, requiredFt }: Omit<Clearance, 'part'>): {
  clearance_ft: Feet
  error_ft: Feet
  required_ft: Feet
  complies: boolean
} {
  return {
    clearance_ft: clearanceFt,
    error_ft: errorFt,
    required_ft: requiredFt,
    complies: clearanceFt - errorFt >= requiredFt - 1e-9,
  }
}

const WHAT = {
  roof: 'the roof and 3 ft beyond its edges',
  building: 'the level top of the building and 3 ft beyond its edges',
  modules: 'the faces of the modules, which are the new surface of the roof, and 3 ft beyond their edges',
} as const

const GROUND = {
  entrance: {
    path: 'service entrance',
    what: 'the ground at the service entrance, lowest of the last support and the drip loop',
  },
  lot: { path: 'ground', what: 'the ground of lots where people live' },
  driveway: { path: 'site_plan.driveway', what: 'the driveway' },
  street: { path: 'site_plan.street', what: 'the street' },
} as const
