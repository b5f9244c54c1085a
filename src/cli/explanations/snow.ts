import { PRACTICE, secondary, type Explanations } from './explanation.js'

const chapter = (place: string) => [secondary('ASCE 7-16', place), secondary('ASCE 7-22', place)]

/** Findings about how snow lies on the roof. */
export const SNOW: Explanations = {
  'structure.snow-held': {
    means: 'Snow that something on the roof holds back is not counted beyond the cases of the load standard.',
    rule: 'Snow that is held above the array, or slides from a higher roof, can weigh several times as much.',
    sources: [PRACTICE],
    fix: 'State higher roofs under higher_roofs; where snow guards or a chimney hold snow on the array, ask a structural engineer.',
  },
  'structure.snow-winter-wind': {
    means: 'A drift could not be worked out, as the winter wind parameter of the site is not stated.',
    rule: 'In ASCE 7-22 the size of a drift follows the wind of the winter, which its hazard tool gives for each place.',
    sources: [secondary('ASCE 7-22', 'eq. 7.6-1')],
    fix: 'Read W2 from the hazard tool of the standard and state it as winter_wind_parameter.',
  },
  'structure.snow-opposite-not-stated': {
    means: 'The distance from eave to ridge on the other side is not stated, so the longest possible one was taken.',
    rule: 'Wind takes the snow of the other side over the ridge; a longer side gives a higher heap.',
    sources: chapter('7.6.1'),
    fix: 'Measure it in plan and state it as opposite_eave_to_ridge_ft.',
  },
  'structure.snow-wall-drift': {
    means: 'An edge of the plane runs along a wall, and what lies above that wall is not stated.',
    rule: 'Snow drifts against a wall and slides down from the roof above it; both can outweigh the snow of the open roof.',
    sources: chapter('7.7 to 7.9'),
    fix: 'State the roof above the wall under higher_roofs, or the wall under parapets.',
  },
  'structure.snow-valley': {
    means: 'The plane has a valley in snow country, and the snow that gathers there is not worked out.',
    rule: 'Drifts of two planes meet in a valley.',
    sources: chapter('7.7.3'),
    fix: 'Have a structural engineer state the snow at the valley, or keep modules and mounts off that plane.',
  },
  'structure.snow-projection': {
    means: 'A box on the roof is long enough to make a snow drift, which is not worked out.',
    rule: 'Boxes shorter than 15 ft, such as chimneys, make no drift that counts; longer ones do.',
    sources: chapter('7.8'),
    fix: 'Have a structural engineer state the snow beside it, or keep modules and mounts away from it.',
  },
  'structure.snow-not-slippery': {
    means:
      'The glass was to be counted as slippery, and is not, as the roof is warm and not known to be insulated enough.',
    rule: 'Up to ASCE 7-16 snow slides off a warm roof surely only above R 30, or R 20 when the roof is ventilated.',
    sources: [secondary('ASCE 7-10', '7.4.1'), secondary('ASCE 7-16', '7.4.1')],
    fix: 'State roof_insulation_r (and roof_ventilated), or slippery_modules: false.',
  },
  'structure.snow-lower-roof-not-stated': {
    means: 'Whether a lower roof lies below the eave is not stated.',
    rule: 'Snow slides off glass at almost any slope and lands on what is below.',
    sources: chapter('7.9'),
    fix: 'List the planes above a lower roof under planes_above_lower_roofs, or state an empty list.',
  },
  'structure.snow-onto-lower-roof': {
    means: 'Snow that slides off the new modules lands on a lower roof, which is not checked here.',
    rule: 'Shingles hold snow that glass lets go, so that the array adds a load to the roof below.',
    sources: chapter('7.9'),
    fix: 'Have the lower roof checked for the stated load with its own snow, or hold the snow with guards made for it.',
  },
  'structure.snow-strip-below-array': {
    means: 'Snow that leaves the glass may pile up on the narrow strip of roof below it.',
    rule: 'If all of it stops there, the strip carries its own snow and that of the array; the figure is an upper bound.',
    sources: [PRACTICE],
    fix: 'Leave 3 ft or more below the array, or have an engineer check eave and gutter for it.',
  },
  'structure.snow-rails-partial': {
    means: 'Rails are checked with snow on all of their length only.',
    rule: 'A beam that runs over several mounts may bend a little more when some of its spans carry half of the snow.',
    sources: [{ document: 'ASCE 7-16', place: '7.5', standing: 'from memory' }],
    fix: 'Keep some of the strength of rails and mounts unused where snow governs.',
  },
}
