import type { Obstruction, RoofProject } from '../project/index.js'
import type { Finding, Source } from '../worksheet/index.js'
import { boxCorners, convexOverlap, distanceBetweenFt, inchesOf, own } from '../values/index.js'
import { moduleName, type ModulePlacement } from './placement.js'

const SOURCE: Source = {
  document: 'Sheet of the appliance, or the fuel gas code that the authority has adopted',
  standing: 'common practice, no source',
}

/** Whether an appliance breathes through it: gas that cannot leave, or air that cannot enter, is carbon monoxide in the house. */
export function isFlue({ kind, serves_appliance: serves }: Obstruction): boolean {
  return kind === 'flue' || kind === 'combustion_air' || serves === true
}

/** Findings about flues and inlets of combustion air on the planes that have modules, and openings whose use nobody stated. */
export function flueFindings(project: RoofProject, modules: readonly ModulePlacement[]): Finding[] {
  const planes = new Set(modules.map((module) => module.roofPlane))
  return [...planes].flatMap((planeId) =>
    Object.entries(own(project.roof_planes, planeId)?.obstructions ?? {}).flatMap(([id, box]) => {
      const path = `roof_planes.${planeId}.obstructions.${id}`
      if (!isFlue(box)) return useNotStated(id, box, path)
      const near = modules.filter((module) => module.roofPlane === planeId)
      return [...clearanceNotStated(id, box, path), ...tooNear(id, box, near), wiringNotChecked(id, path)]
    }),
  )
}

function useNotStated(id: string, { kind, serves_appliance: serves }: Obstruction, path: string): Finding[] {
  if ((kind !== 'vent' && kind !== 'chimney') || serves !== undefined) return []
  return [
    {
      severity: 'warning',
      id: 'roof.vent-use-not-stated',
      message: `whether a furnace, water heater, stove or fireplace breathes through ${kind} '${id}' is not stated, so its clearance is taken as that of a thing that may be covered`,
      where: path,
      source: SOURCE,
      fix: 'Look below the roof where it leads, and state serves_appliance, or its kind: flue, combustion_air, plumbing_vent, exhaust_vent or attic_vent.',
    },
  ]
}

function clearanceNotStated(id: string, { clearance_in: clearance }: Obstruction, path: string): Finding[] {
  if (clearance !== undefined) return []
  return [
    {
      severity: 'error',
      id: 'roof.flue-clearance-not-stated',
      message: `'${id}' carries flue gas or combustion air and the space to keep free round it is not stated; modules, rails or wiring too near can fill the house with carbon monoxide`,
      where: `${path}.clearance_in`,
      source: SOURCE,
      fix: 'Take the clearance from the sheet of the appliance or its vent, or ask the building department.',
    },
  ]
}

function tooNear(id: string, box: Obstruction, modules: readonly ModulePlacement[]): Finding[] {
  const corners = boxCorners({ xFt: box.x_ft, yFt: box.y_ft, widthFt: box.width_ft, heightFt: box.length_ft })
  return modules.flatMap((module): Finding[] => {
    const over = convexOverlap(corners, boxCorners(module))
    const gapIn = over ? 0 : inchesOf(distanceBetweenFt(boxCorners(module), corners))
    const keepIn = box.clearance_in ?? 0
    if (!over && gapIn > keepIn - 0.01) return []
    return [
      {
        severity: 'error',
        id: 'roof.module-near-flue',
        message: `${moduleName(module)} ${over ? `lies over '${id}'` : `is ${(Math.floor(gapIn * 10 + 1e-6) / 10).toFixed(1)} in from '${id}', where ${keepIn} in must stay free`}, which carries flue gas or combustion air: danger of carbon monoxide and fire`,
        where: `arrays.${module.array}.arrangement`,
        source: SOURCE,
        fix: 'Move the module away or leave it out with omit; nobody but the trade of the appliance may move the vent.',
      },
    ]
  })
}

/** Raceways have no place on the plane, so only a person can keep them off. */
function wiringNotChecked(id: string, path: string): Finding {
  return {
    severity: 'note',
    id: 'roof.flue-wiring-not-checked',
    message: `whether wiring and raceways keep off '${id}' is not checked, as their way over the roof is not stated as places`,
    where: path,
    source: SOURCE,
    fix: 'Lead them outside the space that stays free round it, and show that on the roof plan.',
  }
}
