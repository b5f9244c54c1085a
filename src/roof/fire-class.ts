import { tiltDegOf } from '../project/facts.js'
import type { RoofProject } from '../project/index.js'
import type { Finding, Source } from '../worksheet/index.js'
import { own, pitchIn12Of, type Degrees } from '../values/index.js'

type FireClass = 'A' | 'B' | 'C'

const RULE: Source = {
  document: 'IRC 2018 and 2021',
  place: 'R324.4.2 and R902.4: modules with their rack have the fire class that the roof must have',
  standing: 'from memory',
}

/** What is known about an array, its rack and its roof. */
interface Racked {
  readonly array: string
  readonly moduleId: string
  readonly fireType: number | undefined
  readonly railId: string | undefined
  readonly rack: Rack | undefined
  readonly planeId: string
  readonly tiltDeg: number
  readonly covering: string | undefined
}

type Rack = NonNullable<NonNullable<NonNullable<RoofProject['equipment']['rails']>[string]>['fire']>

/** Whether modules and rack together are listed with the fire class that the roof must have, on this slope and covering. */
export function fireClassFindings(project: RoofProject): Finding[] {
  const required = project.roof_access?.required_fire_class
  if (required === 'none') return []
  if (required === undefined) {
    const edition = project.codes?.residential
    return edition === undefined ? [] : [classNotStated(edition.startsWith('IRC') ? 'error' : 'warning')]
  }
  return Object.entries(project.arrays).flatMap(([array, { module, roof_plane: planeId }]) => {
    const railId = project.structure?.rail
    return rackedFindings(required, {
      array,
      moduleId: module,
      fireType: own(project.equipment.modules, module)?.fire_type,
      railId,
      rack: railId === undefined ? undefined : own(project.equipment.rails, railId)?.fire,
      planeId,
      tiltDeg: slopeOf(project, planeId),
      covering: own(project.structure?.framing, planeId)?.covering,
    })
  })
}

function slopeOf(project: RoofProject, planeId: string): Degrees {
  const plane = own(project.roof_planes, planeId)
  return plane === undefined ? 0 : tiltDegOf(plane)
}

function classNotStated(severity: 'error' | 'warning'): Finding {
  return {
    severity,
    id: 'roof.fire-class-not-stated',
    message:
      'the fire class that the roof must have is not stated, so the listed class of modules and rack together is not checked',
    where: 'roof_access.required_fire_class',
    source: RULE,
    fix: 'Ask the building department and state A, B, C or none.',
  }
}

function rackedFindings(required: FireClass, racked: Racked): Finding[] {
  const { fireType, rack, moduleId, railId, array } = racked
  const rackPath = railId === undefined ? 'structure.rail' : `equipment.rails.${railId}.fire`
  const missing: [boolean, string, string][] = [
    [fireType === undefined, `equipment.modules.${moduleId}.fire_type`, `the fire type of module '${moduleId}'`],
    [rack === undefined, rackPath, 'the listed fire class of the rack'],
    [rack !== undefined && rack.class === undefined, `${rackPath}.class`, 'the fire class of the listing'],
    [
      rack !== undefined && rack.module_types === undefined,
      `${rackPath}.module_types`,
      'the module types of the listing',
    ],
    [rack !== undefined && rack.listing === undefined, `${rackPath}.listing`, 'the number of the listing'],
    [
      rack?.roof_coverings !== undefined && racked.covering === undefined,
      `structure.framing.${racked.planeId}.covering`,
      'the covering, which the listing limits,',
    ],
  ]
  const notStated = missing
    .filter(([isMissing]) => isMissing)
    .map(([, where, what]): Finding => ({
      // Without a chosen rail there is no rack yet that could be wrong.
      severity: where === 'structure.rail' ? 'warning' : 'error',
      id: 'roof.fire-class-not-checked',
      message: `array ${array}: ${what} is not stated, so the fire class ${required} of modules and rack together is not checked`,
      where,
      source: RULE,
      fix: 'Take it from the listing of rack and module.',
    }))
  if (notStated.length > 0 || rack === undefined || fireType === undefined) return notStated
  return wrongFor(required, rack, fireType, racked).map((why) => ({
    severity: 'error',
    id: 'roof.fire-class',
    message: `array ${array}: ${why}; the roof must have class ${required}`,
    where: rackPath,
    source: RULE,
    fix: 'Use a rack that is listed for this module type, slope and covering with that class.',
  }))
}

function wrongFor(required: FireClass, rack: Rack, fireType: number, { tiltDeg, covering }: Racked): string[] {
  const listed = rack.class ?? 'C'
  const pitch = pitchIn12Of(tiltDeg)
  const wrong: [boolean, string][] = [
    [listed > required, `modules and rack are listed with class ${listed}`],
    [
      rack.module_types?.includes(fireType) !== true,
      `the listing of the rack does not cover modules of fire type ${fireType}`,
    ],
    [
      pitch < (rack.least_slope_in_12 ?? 0) - 1e-6,
      `the listing starts at a slope of ${rack.least_slope_in_12 ?? 0} in 12, the roof has ${pitch.toFixed(1)} in 12`,
    ],
    [
      rack.roof_coverings !== undefined && !rack.roof_coverings.some((each) => each === covering),
      `the listing does not cover a roof of ${(covering ?? '').replaceAll('_', ' ')}`,
    ],
  ]
  return wrong.filter(([isWrong]) => isWrong).map(([, why]) => why)
}
