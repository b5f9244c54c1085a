import { FIRE_ACCESS_RULES } from '../../tables/fire-access/index.js'
import { PRACTICE, type Explanations } from './explanation.js'

const rules = Object.values(FIRE_ACCESS_RULES)
const pathway = rules.map((one) => one.pathwayIn.source)
const building = rules.flatMap((one) => (one.pathwaysOfBuilding === undefined ? [] : [one.pathwaysOfBuilding.source]))
const rescue = rules.flatMap((one) => (one.rescueOpening === undefined ? [] : [one.rescueOpening]))
const strips = rules.flatMap((one) => [
  one.ridge.smallIn.source,
  ...(one.hipValleyIn === undefined ? [] : [one.hipValleyIn.source]),
])

const FIRE_CLASS = [{ document: 'IRC 2018 and 2021', place: 'R324.4.2 and R902.4', standing: 'from memory' as const }]

/** Findings about places of modules and firefighters' access. */
export const ROOF: Explanations = {
  'roof.fit-too-few': {
    means: 'The roof plane takes fewer modules than the array asks for.',
    rule: 'Modules are placed in rows on what setbacks, pathways and obstructions leave free.',
    sources: [PRACTICE],
    fix: 'Ask for fewer modules, allow the other orientation, or put the rest on another plane.',
  },
  'roof.fewer-for-rafters': {
    means:
      'The plane has room for more modules than were placed, but rails under more of them would not find their rafters.',
    rule: 'A rail needs two mounts, each on a rafter, with its free ends and the distances between mounts within what the rail sheet allows; modules are placed where that can be kept.',
    sources: [PRACTICE],
    fix: 'Nothing to do. A rail that allows longer free ends or spans, or other places of obstructions and setbacks, may hold more.',
  },
  'roof.module-count': {
    means: 'The stated number of modules and the number in the blocks of the arrangement differ.',
    rule: 'Energy, wiring and price all count modules; two answers in one file cannot both be built.',
    sources: [PRACTICE],
    fix: 'Leave modules out, since they are counted from the blocks, or correct the blocks.',
  },
  'roof.no-outline': {
    means: 'The roof plane has no outline, so nothing was checked against its edges.',
    rule: 'Setbacks, pathways, wind zones and the roof plan all need the shape of the plane.',
    sources: [PRACTICE],
    fix: 'Measure eave, ridge and the length from eave to ridge along the surface, and state them as outline.',
  },
  'roof.rack-footprint': {
    means: 'Modules on tilted racks were laid out as if they lay flat on the plane.',
    rule: 'The method knows no racks: where feet stand is not worked out. The energy estimate counts the shade of row on row.',
    sources: [PRACTICE],
    fix: 'Check by hand that the feet stand on the plane and that rows keep clear of the shade of the row before.',
  },
  'roof.no-arrangement': {
    means: 'The array has modules but no places for them.',
    rule: 'Shade, mounts, wire lengths and the roof plan need to know where each module lies.',
    sources: [PRACTICE],
    fix: 'State arrangement: fit, or place blocks of rows and columns.',
  },
  'roof.modules-overlap': {
    means: 'Two modules lie on each other.',
    rule: 'Places are compared as rectangles along the eave and up the slope, with the gap that was asked for.',
    sources: [PRACTICE],
    fix: 'Move one block by the stated overlap, or leave a module out with omit.',
  },
  'roof.module-outside': {
    means: 'A module reaches beyond the edge of its roof plane.',
    rule: 'A module that overhangs the roof catches wind that no method here covers, and blocks gutters and pathways.',
    sources: [PRACTICE],
    fix: 'Move the block in, leave the module out with omit, or measure the outline again.',
  },
  'roof.module-below-rescue-opening': {
    means: 'A module lies below a window or hatch that serves as an emergency escape.',
    rule: 'The roof below such an opening stays free so that people can be brought down from it.',
    sources: rescue,
    fix: 'Keep that part of the roof free: move the block, or leave modules out with omit.',
  },
  'roof.module-on-obstruction': {
    means: 'A module lies on a chimney, vent, skylight or the like.',
    rule: 'What stands on the roof and a module cannot share a place.',
    sources: [PRACTICE],
    fix: 'Move the block, or leave the module out with omit.',
  },
  'roof.edge-clearance': {
    means: 'A module is nearer to a ridge, hip, valley, eave or rake than the strip that must stay free.',
    rule: 'Firefighters cut the roof open below the ridge to let smoke out, and walk along hips and valleys; further strips come from the project file.',
    sources: strips,
    fix: 'Move the block away from the edge, or leave the row out with omit. A written waiver of the authority goes under roof_access.',
  },
  'roof.obstruction-clearance': {
    means: 'A module is nearer to a chimney, vent or skylight than its stated clearance.',
    rule: 'Flues need air, flashings need room to be mended, and vents must not be covered.',
    sources: [PRACTICE],
    fix: 'Move the block, leave the module out with omit, or correct clearance_in of the obstruction.',
  },
  'roof.fire-access-not-checked': {
    means: 'No edition of the residential or fire code is stated, so pathways and ridge setbacks were not checked.',
    rule: 'Widths and numbers of pathways differ between editions.',
    sources: pathway,
    fix: 'Ask the building department which edition it has adopted, and state it as codes.residential.',
  },
  'roof.fire-access-override': {
    means: 'The project file replaces a number of the fire access rules.',
    rule: 'The authority may allow other numbers; the packet has to show that it did.',
    sources: pathway,
    fix: 'Append the written approval to the permit packet.',
  },
  'roof.fire-access-exempt': {
    means: 'The roof plane is so flat that pathways and setbacks are not required on it.',
    rule: 'On a nearly flat roof people can walk anywhere.',
    sources: rules.map((one) => one.exemptPitchIn12.source),
    fix: 'Nothing.',
  },
  'roof.pathway-missing': {
    means: 'The roof plane lacks a free strip, wide enough to walk on, from the lowest roof edge to the ridge.',
    rule: 'Firefighters need a way up to the ridge beside the modules.',
    sources: pathway,
    fix: 'Leave a column of modules out or move the blocks. Where the code allows it, state with fire_pathway that the way lies on the plane beside.',
  },
  'roof.pathways-of-building': {
    means: 'The building as a whole shows fewer pathways than it needs.',
    rule: 'Two ways on separate planes let a crew change sides when fire or wires bar one.',
    sources: building,
    fix: 'State other_pathways for planes that are not in the file, or add those planes to roof_planes.',
  },
  'roof.street-side-pathway': {
    means: 'Nothing shows that one pathway lies on the side of the street or driveway.',
    rule: 'Ladders come from there.',
    sources: building,
    fix: 'Mark the plane with street_side, or say in street_side_pathway where that way lies.',
  },
  'roof.pathway-adjacent-not-allowed': {
    means: 'The project puts a pathway on the neighbouring plane, which the stated edition does not allow.',
    rule: 'Older editions want the pathways on the plane with the modules; later ones let them lie on or straddle the plane beside.',
    sources: pathway,
    fix: 'Ask the authority, and state pathways_per_plane with waiver_note under roof_access if it agrees.',
  },
  'roof.pathway-adjacent': {
    means: 'A pathway lies wholly or partly on the neighbouring plane, where it is not checked.',
    rule: 'Only planes in the file can be measured.',
    sources: pathway,
    fix: 'Keep that strip free of modules and obstructions, and show it on the roof plan.',
  },
  'roof.fire-class-not-stated': {
    means: 'The fire class that the roof must have is not stated, so that of modules and rack was not checked.',
    rule: 'Modules with their rack must have the fire class that the code asks of the roof assembly; the class belongs to the combination, not to the module.',
    sources: FIRE_CLASS,
    fix: 'Ask the building department and state roof_access.required_fire_class.',
  },
  'roof.fire-class-not-checked': {
    means: 'Fire type of the module or the listing of the rack is not stated, so their fire class was not checked.',
    rule: 'The listing of a rack names class, module types, least slope and sometimes roof coverings.',
    sources: FIRE_CLASS,
    fix: 'Take fire_type from the sheet of the module and fire from the listing of the rack.',
  },
  'roof.fire-class': {
    means: 'Modules and rack together do not have the fire class that the roof must have on this slope and covering.',
    rule: 'The listing must cover the module type, the slope and the covering, with at least the class of the roof.',
    sources: FIRE_CLASS,
    fix: 'Use a rack that is listed for this module type, slope and covering with that class.',
  },
  'roof.vent-use-not-stated': {
    means: 'Nobody stated whether a fuel-burning appliance breathes through a vent or chimney.',
    rule: 'A plumbing vent may stand near modules; a flue or an inlet of combustion air needs the space that its sheet asks for.',
    sources: [PRACTICE],
    fix: 'State serves_appliance or the exact kind of the opening.',
  },
  'roof.flue-clearance-not-stated': {
    means: 'A flue or inlet of combustion air has no stated clearance, so nothing was checked against it.',
    rule: 'Flue gas that is held back comes into the house as carbon monoxide. The clearance is never guessed.',
    sources: [PRACTICE],
    fix: 'Take it from the sheet of the appliance or its vent, or ask the building department.',
  },
  'roof.module-near-flue': {
    means: 'A module lies over a flue or inlet of combustion air, or within the space to keep free round it.',
    rule: 'Flue gas that is held back comes into the house as carbon monoxide, and heat can set modules and wiring on fire.',
    sources: [PRACTICE],
    fix: 'Move the module away or leave it out with omit.',
  },
  'roof.flue-wiring-not-checked': {
    means: 'Wiring on the roof has no stated places, so its distance from a flue was not checked.',
    rule: 'Wiring and raceways keep out of the space round a flue as modules do.',
    sources: [PRACTICE],
    fix: 'Lead them outside that space and show it on the roof plan.',
  },
}
