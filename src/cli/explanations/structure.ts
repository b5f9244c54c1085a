import { PRACTICE, secondary, type Explanations } from './explanation.js'

const SOLAR_CLAUSE = [secondary('ASCE 7-16', 'section 29.4.4'), secondary('ASCE 7-22', 'section 29.4.4')]
const SHEET = [
  { document: 'Data sheet of the product, as the project file states it', standing: 'project file' as const },
]
const CLOSER = 'Put the mounts closer together, or choose a stronger product.'
const LONGER = 'Put the mounts closer together, or use a longer or thicker screw.'
const ENGINEER = 'or have a structural engineer check it'

/** Findings about mounts, rails, screws, rafters, wind and snow. */
export const STRUCTURE: Explanations = {
  'structure.solar-tilt': {
    means: 'The modules stand at an angle to the roof for which the wind method does not hold.',
    rule: 'The method is for modules parallel to the roof; wind under a tilted module lifts it like a wing.',
    sources: SOLAR_CLAUSE,
    fix: `Lay the modules parallel to the roof, ${ENGINEER}.`,
  },
  'structure.solar-height': {
    means: 'The modules stand higher above the roof than the wind method allows.',
    rule: 'Close to the roof the pressure above and below a module evens out; farther away it does not.',
    sources: SOLAR_CLAUSE,
    fix: `Lower the modules, ${ENGINEER}.`,
  },
  'structure.solar-module-length': {
    means: 'The module is longer than the distance between gaps that the wind method presumes.',
    rule: 'Pressure evens out through the gaps between modules, so they must not lie too far apart.',
    sources: SOLAR_CLAUSE,
    fix: 'Ask the authority or an engineer whether the reduced wind factor holds for this module.',
  },
  'structure.solar-gap': {
    means: 'Two modules lie closer together than the gap through which pressure evens out.',
    rule: 'Without the gap the reduced wind factor does not hold.',
    sources: SOLAR_CLAUSE,
    fix: 'Leave at least a quarter inch, or use clamps that make such a gap.',
  },
  'structure.solar-edge-distance': {
    means: 'A module lies nearer to the edge of the roof than twice the height of its top above the roof.',
    rule: 'At the edge the wind turns and lifts harder than the method covers.',
    sources: SOLAR_CLAUSE,
    fix: `Move the array away from the edge, lower it, ${ENGINEER}.`,
  },
  'structure.rail-along-slope-not-checked': {
    means:
      'The strength of the rail along the slope is not stated, so snow and weight that slide down the roof were not checked on it.',
    rule: 'On a slope part of every load pulls downhill and bends the rail its weak way.',
    sources: SHEET,
    fix: 'Add the values of the data sheet.',
  },
  'structure.rail-shear-not-checked': {
    means: 'The shear strength of the rail is not stated, so it was not checked.',
    rule: 'Near a mount a rail can fail in shear before it fails in bending.',
    sources: SHEET,
    fix: 'Add the value of the data sheet.',
  },
  'structure.clamp-not-checked': {
    means: 'The strength of the module clamps is not stated, so they were not checked.',
    rule: 'The whole uplift of a module passes through its clamps.',
    sources: SHEET,
    fix: 'Add the values of the data sheet.',
  },
  'structure.mount-lateral-not-checked': {
    means: 'The strength of the mount along the slope is not stated, so only its screws were checked that way.',
    rule: 'A tall foot can bend before its screw gives way.',
    sources: SHEET,
    fix: 'Add the value of the data sheet.',
  },
  'structure.mount-uplift': {
    means: 'Wind pulls harder on a mount than its data sheet allows.',
    rule: 'Uplift of the wind, less part of the weight, goes to the rail by area and to the mounts as a continuous beam.',
    sources: SHEET,
    fix: CLOSER,
  },
  'structure.mount-down': {
    means: 'Snow, weight and wind press harder on a mount than its data sheet allows.',
    rule: 'The worst combination of weight, snow and wind counts.',
    sources: SHEET,
    fix: CLOSER,
  },
  'structure.mount-lateral': {
    means: 'The pull along the slope on a mount is more than its data sheet allows.',
    rule: 'On a slope part of weight and snow pulls downhill.',
    sources: SHEET,
    fix: CLOSER,
  },
  'structure.lag-withdrawal': {
    means: 'Wind pulls harder on the screw than its threads hold in the wood.',
    rule: 'Holding power follows from the density of the wood, the diameter and the length of thread in the rafter.',
    sources: [secondary('NDS 2018', 'eq. 12.2-1')],
    fix: LONGER,
  },
  'structure.lag-lateral': {
    means: 'The pull along the slope on the screw is more than screw and wood bear.',
    rule: 'A screw loaded across bends in the wood and crushes it.',
    sources: [secondary('NDS 2018', 'tables 12.3.1A and 12K')],
    fix: LONGER,
  },
  'structure.lag-combined': {
    means: 'Uplift and the pull along the slope together are more than the screw bears.',
    rule: 'The two loads are joined at the angle of their sum.',
    sources: [secondary('NDS 2018', 'eq. 12.4-1')],
    fix: LONGER,
  },
  'structure.lag-root-tension': {
    means: 'The pull is more than the steel of the screw bears at its thinnest part.',
    rule: 'A screw can break before it is pulled out.',
    sources: [{ document: 'ASTM A307 grade A with the safety factor of AISC 360', standing: 'from memory' }],
    fix: LONGER,
  },
  'structure.rail-moment': {
    means: 'A rail bends more between its mounts, or at its free end, than its strength allows.',
    rule: 'The rail is worked out as a continuous beam over its mounts with the worst combination of loads.',
    sources: [
      { document: 'Aluminum Design Manual', place: 'safety factors 1.65 and 1.95', standing: 'from memory' },
      ...SHEET,
    ],
    fix: CLOSER,
  },
  'structure.rail-shear': {
    means: 'The shear force beside a mount is more than the rail bears.',
    rule: 'Shear is highest beside the supports.',
    sources: SHEET,
    fix: CLOSER,
  },
  'structure.rail-moment-both-ways': {
    means: 'Bending across and along the roof together use up more than the whole strength of the rail.',
    rule: 'The two shares of the strength are added and must not pass 1.',
    sources: SHEET,
    fix: CLOSER,
  },
  'structure.rail-deflection': {
    means: 'The rail sags more than its limit.',
    rule: 'A sagging rail bends the modules on it. The limit is a share of the span.',
    sources: [PRACTICE],
    fix: 'Put the mounts closer together, or choose a stiffer rail.',
  },
  'structure.module-uplift': {
    means: 'Wind lifts a module with more than its tested load.',
    rule: 'The data sheet states the load that the module bears at the allowed clamp places.',
    sources: SHEET,
    fix: 'Move the array out of the edge zones of the roof, or use a stronger module.',
  },
  'structure.module-down': {
    means: 'Snow and wind press on a module with more than its tested load.',
    rule: 'The data sheet states the load that the module bears at the allowed clamp places.',
    sources: SHEET,
    fix: 'Use a stronger module, or clamp it at the places for the higher load.',
  },
  'structure.middle-clamp-uplift': {
    means: 'Wind pulls on a clamp between two modules with more than its strength.',
    rule: 'A middle clamp holds a quarter of each of two modules.',
    sources: SHEET,
    fix: 'Use a stronger clamp, or move the array out of the edge zones of the roof.',
  },
  'structure.end-clamp-uplift': {
    means: 'Wind pulls on a clamp at the end of a row with more than its strength.',
    rule: 'An end clamp holds a quarter of one module, at the edge where wind lifts most.',
    sources: SHEET,
    fix: 'Use a stronger clamp, or move the array out of the edge zones of the roof.',
  },
  'structure.rail-splice': {
    means: 'The rail cannot be cut from the stock lengths with every joint at an allowed place.',
    rule: 'The data sheet says how far from a mount two rails may be joined.',
    sources: SHEET,
    fix: 'Add a stock length, or move a mount.',
  },
  'structure.rail-expansion': {
    means:
      'The rail is longer than it may run without a gap, and no gap between its modules has room for the ends of two rails.',
    rule: 'Aluminium grows in the heat and pushes its mounts apart. Rails of a row end on both sides of a gap that takes an end clamp for each and an inch between them.',
    sources: SHEET,
    fix: 'Leave a wider gap between two modules of the row; no module may bridge it.',
  },
  'structure.splice-not-held': {
    means: 'The rail cannot be cut so that each joint takes the moment and shear at its place.',
    rule: 'Moment and shear at a joint, in every combination up and down, stay within what its sheet says; a joint weaker than the rail keeps out of the middle fifth of a span and off the mounts.',
    sources: [{ document: 'Statics of the continuous rail', standing: 'read' }],
    fix: 'Add a stock length, put the mounts closer together, or use a stronger joint.',
  },
  'structure.splice-hinge-place': {
    means: 'A joint without bending strength lies where the rail without it would carry a moment.',
    rule: 'Such a joint is a hinge and belongs where the moment is next to nothing; the rail is then solved with it, and each piece stands on two mounts.',
    sources: [{ document: 'Statics of the continuous rail', standing: 'read' }],
    fix: 'State the moment that the joint takes, or add a stock length.',
  },
  'structure.splice-moment': {
    means: 'The moment at a joint of a rail is over what the joint takes.',
    rule: 'The moment at the joint in every combination, up and down, stays within the allowable moment of its sheet.',
    sources: SHEET,
    fix: 'Put the mounts closer together, use a stock length that puts the joint elsewhere, or use a stronger joint.',
  },
  'structure.splice-shear': {
    means: 'The shear at a joint of a rail is over what the joint takes.',
    rule: 'The shear at the joint in every combination, up and down, stays within the allowable shear of its sheet.',
    sources: SHEET,
    fix: 'Put the mounts closer together, use a stock length that puts the joint elsewhere, or use a stronger joint.',
  },
  'structure.splice-shear-not-checked': {
    means: 'The sheet of the rail does not state the shear that a joint takes, so it was not checked.',
    rule: 'A joint passes shear from one piece to the next, with or without bending strength.',
    sources: SHEET,
    fix: 'Add the allowable shear of the joint from its data sheet.',
  },
  'structure.rail-movement': {
    means: 'The end of a rail moves farther in heat and cold than the mounts let it.',
    rule: 'A rail grows by dL = alpha L dT with alpha 13e-6 per deg F; each end moves half of it, and the mounts must let it go, as no mount holds the force of a rail that is kept from growing.',
    sources: [{ document: 'Thermal expansion of aluminium', standing: 'from memory' }],
    fix: 'Break the row into shorter rails, or use mounts with longer slots.',
  },
  'structure.rail-movement-not-checked': {
    means: 'The mounts state how far they let a rail move, but the range of temperatures at the site is not known.',
    rule: 'The rail is as cold as 10 deg F below the coldest design temperature and as hot as 50 deg F over the hottest air.',
    sources: [{ document: 'Judgement on the range of rail temperatures', standing: 'common practice, no source' }],
    fix: 'State extreme_low_c and high_0p4pct_c under site.design_temperatures.',
  },
  'structure.rail-piece-mounts': {
    means: 'A piece of a rail would stand on one mount only.',
    rule: 'A piece on one mount turns about it and hangs on its joint; each piece stands on two.',
    sources: [{ document: 'Statics', standing: 'read' }],
    fix: 'Add a longer stock length, or put the mounts closer together.',
  },
  'structure.rail-on-obstruction': {
    means: 'A rail lies on a vent, chimney, skylight or the space to keep free round it.',
    rule: 'Rails end before an obstruction between two modules; each end needs room for an end clamp.',
    sources: [PRACTICE],
    fix: 'Move the modules away from the obstruction, or leave one out with omit.',
  },
  'structure.rail-past-edge': {
    means: 'A rail reaches beyond the edge of its roof plane.',
    rule: 'A rail goes on past the frame of the last module for its end clamp.',
    sources: [PRACTICE],
    fix: 'Move the modules away from the edge, or leave one out with omit.',
  },
  'structure.lead-hole': {
    means: 'The drilled hole is too wide or too narrow for the screw in this wood.',
    rule: 'Too wide a hole loses holding power, too narrow a one splits the rafter.',
    sources: [{ document: 'NDS 2018', place: '12.1.4.2', standing: 'from memory' }],
    fix: 'Use a drill within the range of the message.',
  },
  'structure.lag-spacing': {
    means: 'Two screws of one mount stand too close together.',
    rule: 'Wood splits along the grain between screws that are closer than four diameters.',
    sources: [secondary('NDS 2018', 'table 12.5.1B')],
    fix: 'Choose a mount with its screws farther apart.',
  },
  'structure.covering': {
    means: 'The mount with its lag screws is not known to be made for the covering of the roof.',
    rule: 'Panels of standing seams have to move, so seam clamps hold there and no screw; a membrane takes a post that the roofer flashes in; metal screwed through its face takes brackets whose sheet shows that profile; tile, slate and shake break or give way, so that the base rests on sheathing or rafter. A mount that names the covering under coverings is taken at its word, but on standing seams.',
    sources: [PRACTICE],
    fix: 'Use a mount made for this covering, and name the covering under coverings of the mount when its sheet shows it.',
  },
  'structure.covering-not-stated': {
    means: 'The covering of the roof is not stated, so whether the mount suits it was not checked.',
    rule: 'What holds and seals on shingles does not on metal, membrane, tile or slate.',
    sources: [PRACTICE],
    fix: 'State the covering of the plane.',
  },
  'structure.rafter-probe': {
    means: 'The screw has to meet the middle of the rafter within the stated distance.',
    rule: 'Near its edge wood splits, and a screw beside the rafter holds nothing.',
    sources: [secondary('NDS 2018', 'table 12.5.1C')],
    fix: 'Find both edges of the rafter with a probe before drilling.',
  },
  'structure.no-mount-layout': {
    means:
      'No choice of rafters keeps both the distance between mounts and the free ends of this rail within their limits.',
    rule: 'Mounts stand on rafters only, and every layout was tried.',
    sources: [PRACTICE],
    fix: 'Move the modules so that the rail ends near a rafter, or allow a longer free end or spacing where the sheets do.',
  },
  'structure.stagger-ends-shared': {
    means: 'At its end a rail shares a rafter with the rail below it.',
    rule: 'Rails take turns so that no rafter carries every mount; at the ends there is sometimes no other rafter.',
    sources: [PRACTICE],
    fix: 'Nothing while the checks of rafter bending pass; end mounts carry less than the others.',
  },
  'structure.stagger-not-possible': {
    means: 'Mounts of a rail stand on rafters of the rail below although the rails were to be staggered.',
    rule: 'Spacing and free ends leave no other choice of rafters. A shared rafter carries both rails, and is checked with that load.',
    sources: [PRACTICE],
    fix: 'Accept shared rafters while the checks of rafter bending pass, or use a rail that allows longer spans or free ends.',
  },
}
