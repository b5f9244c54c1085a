import type { RoofProject } from '../../project/index.js'
import type { ModulePlacement } from '../../roof/index.js'
import type { Finding } from '../../worksheet/index.js'
import { feetOf, own, radiansOf, type Feet, type PoundsPerSquareFoot } from '../../values/index.js'
import { planDepthFt, type PlaneGeometry } from '../model/index.js'
import type { FramingSpec } from '../rafters/index.js'
import type { SiteLoads } from '../loads/index.js'
import { snowNotChecked } from './snow-not-checked.js'
import {
  mostSnowBetweenPsf,
  planeSnowCases,
  slopedRoofSnowPsf,
  type HigherRoof,
  type Parapet,
  type PlaneEnd,
  type SnowOnPlane,
  type WorkedSnow,
} from '../snow/index.js'

/** Snow on one plane, at the level of the stated ground snow, psf on the horizontal. */
export interface PlaneSnowLoads {
  /** Balanced first. */
  readonly cases: readonly WorkedSnow[]
  /** Balanced, on the covering. */
  readonly balancedPsf: PoundsPerSquareFoot
  /** Balanced, on the modules. */
  readonly balancedOnModulesPsf: PoundsPerSquareFoot
  /** The worst of all cases on the modules, and its name. */
  readonly modulesPsf: PoundsPerSquareFoot
  readonly modulesCase: string
  /** By case, in their order. */
  readonly onModulesPsf: readonly PoundsPerSquareFoot[]
  /** What could not be worked out, and bounds that were taken. */
  readonly findings: readonly Finding[]
}

/** All cases of snow on a plane, and the worst of them on its modules. */
export function snowOfPlane(
  project: RoofProject,
  site: SiteLoads,
  geometry: PlaneGeometry,
  framing: FramingSpec,
  modules: readonly ModulePlacement[],
): PlaneSnowLoads {
  const on = snowOnPlane(project, site, geometry, framing)
  const { cases, findings } = planeSnowCases(on)
  const balancedPsf = slopedRoofSnowPsf(on.snow, 'other')
  const balancedOnModulesPsf = slopedRoofSnowPsf(on.snow, site.slipperyModules ? 'slippery' : 'other')
  const { fromFt, toFt } = extentOf(geometry, modules)
  const onModulesPsf = cases.map(({ kind, snowCase }) =>
    kind === 'balanced' ? balancedOnModulesPsf : mostSnowBetweenPsf(snowCase, fromFt, toFt),
  )
  const modulesPsf = Math.max(0, ...onModulesPsf)
  return {
    cases,
    balancedPsf,
    balancedOnModulesPsf,
    modulesPsf,
    modulesCase: cases[onModulesPsf.indexOf(modulesPsf)]?.snowCase.name ?? 'balanced',
    onModulesPsf,
    findings: [...findings, ...snowNotChecked(project, site, geometry, on)],
  }
}

function snowOnPlane(
  project: RoofProject,
  site: SiteLoads,
  geometry: PlaneGeometry,
  framing: FramingSpec,
): SnowOnPlane {
  const { snowCases: snow } = site
  const depthFt = planDepthFt(geometry)
  const isGable = geometry.edges.some(({ kind }) => kind === 'ridge' || kind === 'hip')
  const overhangFt = feetOf(framing.eaveOverhangIn)
  const kind = own(project.structure?.framing, geometry.id)?.kind
  const member = framing.spansFt.length > 1 ? ('continuous rafter' as const) : ('rafter' as const)
  return {
    plane: geometry.id,
    snow: { ...site.snow, tiltDeg: geometry.tiltDeg },
    mapsOverStated: snow.mapsOverStated,
    winterWind: snow.winterWind,
    depthFt,
    ridge: isGable
      ? {
          framing: kind === 'truss' ? 'truss' : member,
          windwardFt: snow.oppositeEaveToRidgeFt ?? longestFetchFt(site, overhangFt),
        }
      : undefined,
    higherRoofs: higherRoofsOf(project, geometry),
    parapets: parapetsOf(project, geometry.id),
    overhangFt,
    iceDams: snow.iceDams,
    spansFt: framing.spansFt,
  }
}

/** No side of a roof reaches farther than the longer side of the house with its overhang. */
const longestFetchFt = (site: SiteLoads, overhangFt: Feet): Feet => site.lengthFt + overhangFt

function higherRoofsOf(project: RoofProject, geometry: PlaneGeometry): HigherRoof[] {
  const stated = Object.entries(project.structure?.snow?.higher_roofs ?? {})
  return stated
    .filter(([, roof]) => roof.plane === geometry.id)
    .map(([id, roof]) => ({
      id,
      end: roof.end,
      stepFt: roof.step_ft,
      upperLengthFt: roof.upper_length_ft,
      lowerLengthFt: Math.max(roof.lower_length_ft ?? 0, lengthAcross(geometry, roof.end)),
      upperSlopeDeg: roof.upper_slope_deg,
      upperEaveToRidgeFt: roof.upper_eave_to_ridge_ft,
      upperSlippery: roof.upper_slippery,
      gapFt: roof.gap_ft ?? 0,
    }))
}

function parapetsOf(project: RoofProject, plane: string): Parapet[] {
  return Object.entries(project.structure?.snow?.parapets ?? {})
    .filter(([, parapet]) => parapet.plane === plane)
    .map(([id, parapet]) => ({
      id,
      end: parapet.end,
      heightFt: parapet.height_ft,
      lengthFt: parapet.length_ft,
      fetchFt: parapet.fetch_ft,
    }))
}

/** Length of the plane at right angles to one of its ends, ft in plan. */
function lengthAcross(geometry: PlaneGeometry, end: PlaneEnd): Feet {
  if (end !== 'side') return planDepthFt(geometry)
  const xs = geometry.edges.map(({ from }) => from.xFt)
  return Math.max(...xs) - Math.min(...xs)
}

/** From the lower end of the lowest module to the upper end of the highest, horizontal from the eave, ft. */
function extentOf(geometry: PlaneGeometry, modules: readonly ModulePlacement[]): { fromFt: Feet; toFt: Feet } {
  const flatten = Math.cos(radiansOf(geometry.tiltDeg))
  const lowest = Math.min(...geometry.edges.map(({ from }) => from.yFt))
  return {
    fromFt: (Math.min(...modules.map((m) => m.yFt)) - lowest) * flatten,
    toFt: (Math.max(...modules.map((m) => m.yFt + m.heightFt)) - lowest) * flatten,
  }
}
