import { landingPanel } from '../landing-panel.js'
import type { Project } from '../project-types.generated.js'
import { tiltDegOf } from '../tilt.js'
import { madeUp, stated, type Given } from './given.js'

/** Where a new house stands. */
export interface StartingSite {
  readonly address: Given<string>
  /** North positive, deg. */
  readonly latitudeDeg: Given
  /** East positive, deg. */
  readonly longitudeDeg: Given
  /** Ground above sea level, ft. */
  readonly elevationFt?: Given | undefined
  /** Local standard time minus UTC, h. */
  readonly utcOffsetH?: Given | undefined
}

export interface StartingPlane {
  readonly id: string
  readonly azimuthDeg: Given
  readonly tilt: Given
  /** Key that `tilt` stands under. */
  readonly tiltKey: 'pitch_in_12' | 'tilt_deg'
  readonly widthFt: Given
  /** Along the surface, from eave to ridge. */
  readonly depthFt: Given
  /** As long as the eave where the roof has gables, less on a hip roof, 0 where the plane ends in a point. */
  readonly ridgeFt: Given
  readonly eaveHeightFt: Given
}

/** What the parts of a new file are written from. */
export interface StartingHouse {
  readonly title: Given<string>
  readonly site: StartingSite
  readonly planes: readonly StartingPlane[]
  /** Number of modules; as many as fit when left out. */
  readonly modules?: Given | undefined
  /** A file with data sheets and what is used of it; the invented equipment when left out. */
  readonly equipment?: { readonly file: string; readonly module: string; readonly inverter: string } | undefined
  readonly panel?: { readonly busA: Given; readonly mainA: Given } | undefined
  readonly bill?: { readonly yearKwh: Given; readonly usdPerKwh: Given; readonly fixedUsd: Given } | undefined
  /** Whether strings of modules feed inverters, in place of an inverter behind each module. */
  readonly strings?: boolean | undefined
  /** Where the installation is stated as a tree of panels: the panel that the system lands on. */
  readonly landsOn?: string | undefined
  /** Equipment that the file has already. */
  readonly rail?: string | undefined
  readonly mount?: string | undefined
  readonly trunk?: string | undefined
  readonly storage?: { readonly unit?: string | undefined; readonly count?: number | undefined } | undefined
  /** Whether a way of the wires of the storage is stated. */
  readonly storageRun?: boolean | undefined
  /** Where the installation is stated as a tree of panels: the one that the service feeds. */
  readonly firstPanel?: string | undefined
  /** Main of the panel that the service feeds, A. */
  readonly firstMainA?: number | undefined
}

export const MADE_UP_SITE: StartingSite = {
  address: madeUp('Sampletown (invented)'),
  latitudeDeg: madeUp(38.6),
  longitudeDeg: madeUp(-121.5),
  elevationFt: madeUp(120),
  utcOffsetH: madeUp(-8),
}

export const MADE_UP_PLANE: StartingPlane = {
  id: 'south',
  azimuthDeg: madeUp(180),
  tilt: madeUp(6),
  tiltKey: 'pitch_in_12',
  widthFt: madeUp(40),
  depthFt: madeUp(16),
  ridgeFt: madeUp(40),
  eaveHeightFt: madeUp(10),
}

/** What a project states already, for parts that are added to it; what it does not state is made up. */
export function houseOfProject(project: Project): StartingHouse {
  const { equipment, electrical, arrays, site } = project
  const planes = Object.entries(project.roof_planes).map(([id, plane]): StartingPlane => {
    const { outline } = plane
    const size = (value: number | undefined, made: Given): Given => (value === undefined ? made : stated(value))
    const width = size(outline?.width_ft, MADE_UP_PLANE.widthFt)
    const ridge = outline?.shape === 'hip' ? outline.ridge_ft : outline?.shape === 'triangle' ? 0 : undefined
    return {
      ...MADE_UP_PLANE,
      id,
      azimuthDeg: stated(plane.azimuth_deg),
      tilt: stated(tiltDegOf(plane)),
      tiltKey: 'tilt_deg',
      widthFt: width,
      depthFt: size(outline?.depth_ft, MADE_UP_PLANE.depthFt),
      ridgeFt: ridge === undefined ? width : stated(ridge),
      eaveHeightFt: size(plane.eave_height_ft, MADE_UP_PLANE.eaveHeightFt),
    }
  })
  const used = new Set(Object.values(arrays).map((array) => array.roof_plane))
  const [trunk] = Object.keys(equipment.trunk_cables ?? {})
  const [rail] = Object.keys(equipment.rails ?? {})
  const [mount] = Object.keys(equipment.mounts ?? {})
  // Without its connection a tree gives the panel that no feeder goes to.
  const { connection: _, ...bare } = electrical ?? {}
  const first = landingPanel(bare)
  const [storageUnit] = Object.keys(equipment.storage_units ?? {})
  return {
    title: stated(project.title),
    site: { ...MADE_UP_SITE, latitudeDeg: stated(site.latitude_deg), longitudeDeg: stated(site.longitude_deg) },
    planes: planes.filter(({ id }) => used.has(id)),
    strings: Object.values(arrays).some((array) => array.strings !== undefined),
    landsOn: electrical?.distribution === undefined ? undefined : landingPanel(electrical).id,
    rail,
    mount,
    trunk,
    storage: { unit: project.storage?.unit ?? storageUnit, count: project.storage?.count },
    storageRun: Object.values(electrical?.runs ?? {}).some(({ carries }) => carries.includes('storage')),
    firstPanel: electrical?.distribution === undefined ? undefined : first.id,
    firstMainA: first.stated?.main_a,
  }
}
