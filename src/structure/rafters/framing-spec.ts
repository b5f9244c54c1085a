import type { Project } from '../../project/index.js'
import { LUMBER_SIZES, SPECIFIC_GRAVITY, TEMPERATURE, type NominalSize } from '../../tables/nds/index.js'
import { StageError } from '../../worksheet/index.js'
import { own, type Feet, type Inches, type PoundsPerSquareFoot } from '../../values/index.js'
import { need } from '../model/index.js'

/** The framing under a plane, complete. */
export interface FramingSpec {
  readonly nominalSize: NominalSize
  readonly species: string | undefined
  readonly grade: string | undefined
  readonly specificGravity: number
  readonly breadthIn: Inches
  readonly depthIn: Inches
  readonly spacingIn: Inches
  readonly firstOffsetIn: Inches
  /** Horizontal spans from the wall under the eave up, the first always, the others as far as they are stated. */
  readonly spansFt: readonly Feet[]
  readonly eaveOverhangIn: Inches
  readonly rakeOverhangIn: Inches
  /** Sheathing and covering together, in. */
  readonly layersIn: Inches
  readonly covering: Framing['covering']
  readonly existingDeadPsf: PoundsPerSquareFoot
  readonly wet: boolean
  readonly temperatureFactor: number
}

const ATTIC = 'Go into the attic and measure, or look at the house plans.'

/**
 * Framing under a roof plane.
 *
 * @throws StageError when a value is missing, or the framing is a truss or a purlin roof.
 */
export function framingSpec(project: Project, plane: string): FramingSpec {
  const at = `structure.framing.${plane}`
  const f = need(own(project.structure?.framing, plane), at, `the framing under roof plane '${plane}'`, ATTIC)
  refuseFraming(f, at)
  const nominalSize = need(f.nominal_size, `${at}.nominal_size`, 'the size of the rafters', ATTIC)
  const wet = need(f.wet_service, `${at}.wet_service`, 'whether the wood stays wet', 'false under a tight roof.')
  const heat = need(
    f.sustained_temperature,
    `${at}.sustained_temperature`,
    'the sustained temperature of the wood',
    'up_to_100_f for most attics; ask the engineer in hot deserts.',
  )
  return {
    nominalSize,
    species: f.species,
    grade: f.grade,
    specificGravity: gravityOf(f, at),
    ...LUMBER_SIZES[nominalSize],
    spacingIn: need(f.spacing_in, `${at}.spacing_in`, 'the rafter spacing', ATTIC),
    firstOffsetIn: need(f.first_offset_in, `${at}.first_offset_in`, 'the place of the first rafter', ATTIC),
    spansFt: [
      need(f.span_ft, `${at}.span_ft`, 'the horizontal span of the rafters', ATTIC),
      ...(f.further_spans_ft ?? []),
    ],
    ...overhangs(f, at),
    layersIn: layersIn(f, at),
    covering: f.covering,
    existingDeadPsf: need(
      f.existing_dead_psf,
      `${at}.existing_dead_psf`,
      'the dead load of the roof',
      'Add covering, sheathing, rafters and ceiling; the building department or a dead-load table gives weights.',
    ),
    wet,
    temperatureFactor: TEMPERATURE[heat][wet ? 'wet' : 'dry'],
  }
}

type Framing = NonNullable<NonNullable<Project['structure']>['framing']>[string]

/** Trusses and purlins, which are outside the method. */
function refuseFraming(f: Framing, at: string): void {
  const kind = need(f.kind, `${at}.kind`, 'whether the framing is rafters or trusses', ATTIC)
  if (kind === 'truss') {
    throw new StageError(
      `${at}.kind`,
      'outside the method: a factory-made truss must not get new loads or holes without its designer',
      'Ask the truss manufacturer or a structural engineer.',
    )
  }
  if (f.direction === 'along_eave') {
    throw new StageError(
      `${at}.direction`,
      'outside the method: framing along the eave (purlins) is not covered',
      'Ask a structural engineer.',
    )
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
