import type { RoofProject } from '../../project/index.js'
import {
  LUMBER_SIZES,
  SPECIFIC_GRAVITY,
  TEMPERATURE,
  type NominalSize,
  type SustainedTemperature,
} from '../../tables/nds/index.js'
import { StageError } from '../../worksheet/index.js'
import { own, type Feet, type Inches, type PoundsPerSquareFoot } from '../../values/index.js'
import { need } from '../model/index.js'
import { countedSpans, type UncountedSupport } from './rafter-supports.js'

/** The framing under a plane, complete. */
export interface FramingSpec {
  readonly kind: 'rafter' | 'truss'
  readonly nominalSize: NominalSize
  readonly species: string | undefined
  readonly grade: string | undefined
  readonly specificGravity: number
  readonly breadthIn: Inches
  readonly depthIn: Inches
  readonly spacingIn: Inches
  readonly firstOffsetIn: Inches
  /** Horizontal spans from the wall under the eave up, between supports that count; none of a truss. */
  readonly spansFt: readonly Feet[]
  /** Stated supports that do not count, so that the spans beside them are one. */
  readonly uncounted: readonly UncountedSupport[]
  /** Whether a rafter runs over its supports in one piece; undefined when not stated. */
  readonly continuous: boolean | undefined
  readonly ridge: 'board' | 'beam' | undefined
  readonly ties: Framing['ties']
  readonly tieHeightShare: number | undefined
  /** Length of the level seat cut on the plate; undefined when not stated. */
  readonly seatIn: Inches | undefined
  /** Depth of the notch at the plate at right angles to the rafter; undefined when not stated. */
  readonly notchIn: Inches | undefined
  readonly ceiling: { readonly attached: boolean | undefined; readonly finish: Framing['ceiling_finish'] }
  readonly cutRafters: readonly number[]
  readonly loadSharing: Framing['load_sharing']
  readonly truss: Framing['truss']
  readonly eaveOverhangIn: Inches
  readonly rakeOverhangIn: Inches
  /** Sheathing and covering together, in. */
  readonly layersIn: Inches
  readonly covering: Framing['covering']
  readonly existingDeadPsf: PoundsPerSquareFoot
  readonly wet: boolean
  readonly incised: boolean
  readonly temperature: SustainedTemperature
  /** Ct of strength; the connections of the standard have the same. */
  readonly temperatureFactor: number
}

const ATTIC = 'Go into the attic and measure, or look at the house plans.'

/**
 * Framing under a roof plane.
 *
 * @throws StageError when a value is missing, or the framing runs along the eave.
 */
export function framingSpec(project: RoofProject, plane: string): FramingSpec {
  const at = `structure.framing.${plane}`
  const f = need(own(project.structure?.framing, plane), at, `the framing under roof plane '${plane}'`, ATTIC)
  const kind = need(f.kind, `${at}.kind`, 'whether the framing is rafters or trusses', ATTIC)
  refusePurlins(f, at)
  const nominalSize = need(f.nominal_size, `${at}.nominal_size`, 'the size of the rafters', ATTIC)
  const wet = need(f.wet_service, `${at}.wet_service`, 'whether the wood stays wet', 'false under a tight roof.')
  const heat = need(
    f.sustained_temperature,
    `${at}.sustained_temperature`,
    'the sustained temperature of the wood',
    'up_to_100_f for most attics; ask the engineer in hot deserts.',
  )
  return {
    kind,
    nominalSize,
    species: f.species,
    grade: f.grade,
    specificGravity: gravityOf(f, at),
    ...sizeOf(f, nominalSize),
    spacingIn: need(f.spacing_in, `${at}.spacing_in`, 'the rafter spacing', ATTIC),
    firstOffsetIn: need(f.first_offset_in, `${at}.first_offset_in`, 'the place of the first rafter', ATTIC),
    ...spansOf(f, at, kind),
    ...jointsOf(f),
    ...overhangs(f, at),
    layersIn: layersIn(f, at),
    covering: f.covering,
    existingDeadPsf: need(
      f.existing_dead_psf,
      `${at}.existing_dead_psf`,
      'the dead load of the roof',
      'Add covering, sheathing, rafters and ceiling; the building department or a dead-load table gives weights.',
    ),
    truss: f.truss,
    wet,
    incised: f.incised ?? false,
    temperature: heat,
    temperatureFactor: TEMPERATURE[heat][wet ? 'wet' : 'dry'],
  }
}

type Framing = NonNullable<NonNullable<RoofProject['structure']>['framing']>[string]

/** Purlins that carry the roof, which are outside the method. */
function refusePurlins(f: Framing, at: string): void {
  if (f.direction === 'along_eave') {
    throw new StageError(
      `${at}.direction`,
      'outside the method: framing along the eave (purlins) is not covered',
      'Ask a structural engineer.',
    )
  }
}

/** Dressed or measured size; the measured one where it is stated. */
function sizeOf(f: Framing, size: NominalSize): Pick<FramingSpec, 'breadthIn' | 'depthIn'> {
  const dressed = LUMBER_SIZES[size]
  return {
    breadthIn: f.measured_breadth_in ?? dressed.breadthIn,
    depthIn: f.measured_depth_in ?? dressed.depthIn,
  }
}

/** Spans between supports that count; a truss has none of its own. */
function spansOf(
  f: Framing,
  at: string,
  kind: FramingSpec['kind'],
): Pick<FramingSpec, 'spansFt' | 'uncounted' | 'continuous'> {
  if (kind === 'truss') return { spansFt: [], uncounted: [], continuous: undefined }
  const stated = [
    need(f.span_ft, `${at}.span_ft`, 'the horizontal span of the rafters', ATTIC),
    ...(f.further_spans_ft ?? []),
  ]
  return { ...countedSpans(stated, f.supports ?? [], f.nominal_size), continuous: f.continuous }
}

/** How the rafters are cut, tied and helped. */
function jointsOf(
  f: Framing,
): Pick<
  FramingSpec,
  'ridge' | 'ties' | 'tieHeightShare' | 'seatIn' | 'notchIn' | 'ceiling' | 'cutRafters' | 'loadSharing'
> {
  return {
    ridge: f.ridge,
    ties: f.ties,
    tieHeightShare: f.tie_height_share,
    seatIn: f.seat_in,
    notchIn: f.notch_in,
    ceiling: { attached: f.ceiling_attached, finish: f.ceiling_finish },
    cutRafters: f.cut_rafters ?? [],
    loadSharing: f.load_sharing,
  }
}

function overhangs(f: Framing, at: string): Pick<FramingSpec, 'eaveOverhangIn' | 'rakeOverhangIn'> {
  return {
    eaveOverhangIn: need(
      f.eave_overhang_in,
      `${at}.eave_overhang_in`,
      'the depth of the eave overhang',
      'Measure it; 0 when there is none.',
    ),
    rakeOverhangIn: need(
      f.rake_overhang_in,
      `${at}.rake_overhang_in`,
      'the depth of the gable overhang',
      'Measure it; 0 when there is none.',
    ),
  }
}

/** Sheathing and covering together, in. */
function layersIn(f: Framing, at: string): Inches {
  return (
    need(f.sheathing_in, `${at}.sheathing_in`, 'the thickness of the sheathing', ATTIC) +
    need(
      f.covering_in,
      `${at}.covering_in`,
      'the thickness of the covering',
      'Measure it at the edge of the roof, all layers.',
    )
  )
}

function gravityOf(framing: Framing, at: string): number {
  const bySpecies = framing.species === undefined ? undefined : SPECIFIC_GRAVITY[framing.species]
  if (bySpecies !== undefined && framing.specific_gravity !== undefined)
    return Math.min(bySpecies, framing.specific_gravity)
  return need(
    bySpecies ?? framing.specific_gravity,
    `${at}.species`,
    'the species of the rafters',
    'Read the grade stamp; when it cannot be read, state specific_gravity as the lowest that may occur (0.35 to 0.42).',
  )
}
