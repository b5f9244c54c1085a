import { secondary, type Explanations } from './explanation.js'

const FORCE = [secondary('ASCE 7-16', '13.3.1'), secondary('ASCE 7-22', '13.3.1')]
const EXEMPT = [secondary('ASCE 7-16', '11.1.2 and 13.1.4'), secondary('IBC', '1613.1')]
const LATERAL = [{ document: 'IEBC 2018', place: '503.4', standing: 'read' as const }]

/** Findings about earthquake. */
export const SEISMIC: Explanations = {
  'structure.seismic-not-stated': {
    means: 'Nothing is stated about earthquake at the site, so the array was not checked for it.',
    rule: 'Most houses need no check; which ones do follows from the seismic design category and the kind of dwelling.',
    sources: EXEMPT,
    fix: 'State dwelling and design_category; in D to F also sds_g.',
  },
  'structure.seismic-sds-missing': {
    means: 'The site shakes hard enough to ask for a check, and how hard is not stated.',
    rule: 'The force on the array is a share of its weight that follows from SDS.',
    sources: FORCE,
    fix: 'State sds_g, or ss_g with fa, from the hazard tool of the standard or the building department.',
  },
  'structure.seismic-category': {
    means: 'The seismic design category is lower than the stated shaking gives.',
    rule: 'A house where SDS is 0.5 g or more is in category D or above; the array is then not exempt.',
    sources: [{ document: 'ASCE 7-16', place: 'table 11.6-1', standing: 'from memory' }],
    fix: 'Ask the building department for both values.',
  },
  'structure.seismic-factors-unused': {
    means: 'A factor for the force of ASCE 7-22 is stated that this check does not use.',
    rule: 'CAR and Rpo belong together and to ASCE 7-22; without both the largest force of the standard is taken.',
    sources: [secondary('ASCE 7-22', '13.3.1')],
    fix: 'State both car and rpo with ASCE 7-22, or none.',
  },
  'structure.seismic-across-not-checked': {
    means: 'An earthquake may push the array along the eave, and the strength of the mount that way is not stated.',
    rule: 'Wind and snow load a mount along the slope; an earthquake loads it in any direction.',
    sources: FORCE,
    fix: 'State mount_lateral_across_lb from the sheet or test report of the mount.',
  },
  'structure.seismic-clamps-not-checked': {
    means: 'An earthquake along the rails may make modules slide in their clamps, which is not checked.',
    rule: 'Along the rail nothing but the grip of the clamps holds a module; the force on each module is stated.',
    sources: FORCE,
    fix: 'Look for the slip load in the sheet or test report of the clamps.',
  },
  'structure.seismic-weights-not-stated': {
    means: 'How much more the house weighs with the array is not known, so its walls are not looked at.',
    rule: 'The sideways load of an existing house may grow by 10 % without a new check of its walls.',
    sources: LATERAL,
    fix: 'State roof_area_ft2 and roof_psf at least; ceiling and walls lower the ratio.',
  },
  'structure.seismic-weights-incomplete': {
    means: 'Of a part of the house only its area or its weight is stated, so it was left out.',
    rule: 'A lighter house makes the array weigh more beside it, so leaving a part out is the safe side.',
    sources: LATERAL,
    fix: 'State both its area and its weight, or neither.',
  },
  'structure.seismic-roof-dead': {
    means: 'Roof and array together are heavier than the walls of a house braced by tables are made for.',
    rule: 'In categories D0 to D2 the bracing tables of the residential code hold up to 15 psf of roof and ceiling.',
    sources: [{ document: 'IRC 2018', place: 'R301.2.2', standing: 'from memory' }],
    fix: 'Ask the building department whether the bracing was designed for a heavier roof, or have an engineer check it.',
  },
  'structure.mount-seismic': {
    means: 'An earthquake pushes or pulls harder on a mount than it holds.',
    rule: 'A share of the weight of the array acts in any horizontal direction, with part of it up or down.',
    sources: FORCE,
    fix: 'Put the mounts closer together or choose a stronger mount; with ASCE 7-22 state car and rpo instead of taking the cap.',
  },
  'structure.house-lateral-increase': {
    means: 'The array adds more than a tenth to the sideways load of the house in an earthquake.',
    rule: 'That load goes with the weight of roof, ceiling and upper walls; up to a tenth more asks for no new check.',
    sources: LATERAL,
    fix: 'Have a structural engineer check the walls of the house for earthquake with the array.',
  },
}
