import { PRACTICE, type Explanations } from './explanation.js'
import { INSULATION_SOURCE } from '../../tables/fieldwork/index.js'

const WORKING_SPACE = { document: 'NEC', edition: '2017', place: '110.26(A)', standing: 'read' } as const
const adopted = 'Ask the building department which edition it has adopted.'

/** Findings of the permit packet, the work plan, and of stages that cannot run. */
export const PERMIT: Explanations = {
  '*.cannot-run': {
    means:
      'This stage of the work lacks something that it needs, or meets a case that its method does not reach. The first word of the id names the stage.',
    rule: 'A safety input is asked for and never guessed, and no method is stretched beyond its limits; so the stage stops and says what it wants.',
    sources: [PRACTICE],
    fix: "Do what the finding's own fix says; it names the place in the project file and where the number is found.",
  },
  'permit.structure-cannot-run': {
    means: 'The packet lacks mounts and loads, because the structural stage cannot run.',
    rule: 'The attachment sheet is drawn from the results of that stage.',
    sources: [PRACTICE],
    fix: 'Run `gablewatt space-mounts` and do what it asks for, or draw what there is with --draft.',
  },
  'permit.electrical-cannot-run': {
    means: 'The packet lacks the one-line diagram and its tables, because the wiring stage cannot run.',
    rule: 'The electrical sheets are drawn from the results of that stage.',
    sources: [PRACTICE],
    fix: 'Run `gablewatt size-wire` and do what it asks for, or draw what there is with --draft.',
  },
  'permit.no-date': {
    means: 'The sheets have no date of issue.',
    rule: 'A reviewer must know which issue is the newest. Nothing is taken from the clock, so that the same file always gives the same packet.',
    sources: [PRACTICE],
    fix: 'State document.date.',
  },
  'permit.no-electrical-code': {
    means: 'No edition of the electrical code is stated.',
    rule: 'Rules, sections and labels differ between editions, and the cover sheet names the one that was used.',
    sources: [PRACTICE],
    fix: `${adopted} State it as codes.electrical.`,
  },
  'permit.no-residential-code': {
    means: 'No edition of the residential or fire code is stated.',
    rule: 'Firefighters need pathways, and their widths differ between editions.',
    sources: [PRACTICE],
    fix: `${adopted} State it as codes.residential.`,
  },
  'permit.no-address': {
    means: 'The sheets have no address of the site.',
    rule: 'A permit is given for a place.',
    sources: [PRACTICE],
    fix: 'State site.address.',
  },
  'permit.no-site-plan': {
    means: 'There is no site plan, so that sheet cannot be drawn.',
    rule: 'Reviewers look there for lot lines, the access of firefighters and the place of meter and disconnect.',
    sources: [PRACTICE],
    fix: "State lot, buildings and equipment under site_plan; the assessor's map shows the lot.",
  },
  'permit.no-roof-plan': {
    means: 'No module has a place on a roof plane, so there is no roof plan.',
    rule: 'The roof plan shows every module with setbacks and pathways.',
    sources: [PRACTICE],
    fix: 'Give each array an arrangement, and its plane an outline.',
  },
  'permit.no-attachment': {
    means: 'Rail, mount or framing is not stated, so the attachment sheet cannot be drawn.',
    rule: 'That sheet shows how the array is held on the roof.',
    sources: [PRACTICE],
    fix: 'State structure.rail, structure.mount and structure.framing with their equipment.',
  },
  'permit.no-outline': {
    means: 'A roof plane with modules has no outline, so its roof plan cannot be drawn.',
    rule: 'The plan shows edges, setbacks and pathways to scale.',
    sources: [PRACTICE],
    fix: 'Measure the plane and state its outline.',
  },
  'drawings.does-not-fit': {
    means:
      'A sheet has no room for some of its words, not beside what they name, not with a line to it, not as a keyed note.',
    rule: 'Words over words or over a drawing may hide what a reviewer must read, so nothing is printed over something else; the packet stops instead.',
    sources: [PRACTICE],
    fix: 'Draw on larger paper with --size, shorten the names that the finding quotes, or lower drawings.least_text_in if the authority allows it.',
  },
  'permit.drawn-as-draft': {
    means: 'The packet of this house is stamped DRAFT on every sheet, because something is missing or a check fails.',
    rule: 'A fleet draws what there is of each house; only a packet without errors is without the stamp.',
    sources: [PRACTICE],
    fix: 'Run `gablewatt draw-permit` on the house alone: it lists all that stops the packet. Mend it and run the fleet again.',
  },
  'fleet.paper-draft': {
    means: 'A proposal, an application or a hand-over file of this house is stamped DRAFT on every page.',
    rule: 'A paper that rests on made-up values is no paper to hand over, sign or file; its first page lists them.',
    sources: [PRACTICE],
    fix: 'Look each value up (`gablewatt check-project` lists them), state what is true and take !made_up away.',
  },
  'fleet.paper-not-written': {
    means: 'The proposal of this house is not written, because a check of the offer fails.',
    rule: 'An offer that breaks a rule is not drawn, not even as a draft: it might be handed over.',
    sources: [PRACTICE],
    fix: 'Run `gablewatt write-proposal --check` on the house alone: it lists what fails.',
  },
  'work.space-mounts-missing': {
    means: 'The work plan lacks the places of the mounts, because that stage cannot run.',
    rule: 'Where each mount goes is worked out, not chosen on the roof; until then the plan stops at that step.',
    sources: [PRACTICE],
    fix: 'Run `gablewatt space-mounts` and do what it asks for.',
  },
  'work.insulation-voltage-unknown': {
    means: 'The insulation test of a string has no test voltage, because the limit of its modules is not stated.',
    rule: 'The test voltage goes by 1.25 times Voc of the string, but is never above the maximum system voltage of what stays connected.',
    sources: [INSULATION_SOURCE],
    fix: 'State max_system_voltage_v of the module from its data sheet.',
  },
  'work.size-wire-missing': {
    means: 'The work plan lacks conductors, breakers and labels, because that stage cannot run.',
    rule: 'Sizes are worked out, not chosen at the house; until then the plan stops at that step.',
    sources: [PRACTICE],
    fix: 'Run `gablewatt size-wire` and do what it asks for.',
  },
  'wall.space-depth': {
    means: 'In front of a piece of equipment less depth is clear than somebody needs who works on it while it is live.',
    rule: 'Up to 1000 V to ground 3 ft are the least where nothing live or grounded stands opposite (condition 1); with a grounded wall opposite more is asked above 150 V.',
    sources: [WORKING_SPACE],
    fix: 'Put the equipment where the space is free, or clear the space; then state clear_depth_in anew.',
  },
  'wall.space-width': {
    means: 'In front of a piece of equipment less width is clear than it needs.',
    rule: 'The width of the equipment, at least 30 in. The equipment need not be in the middle of it.',
    sources: [WORKING_SPACE],
    fix: 'Put the equipment where the space is free, or clear the space; then state clear_width_in anew.',
  },
  'wall.space-height': {
    means: 'In front of a piece of equipment less height is clear than it needs.',
    rule: 'At least 6.5 ft from the ground, or the height of the equipment where it reaches higher. Service equipment of existing dwellings up to 200 A may have less; ask the authority.',
    sources: [WORKING_SPACE],
    fix: 'Put the equipment where the space is free, or ask the authority about existing service equipment.',
  },
  'wall.space-unknown': {
    means: 'Nobody states how much space is clear in front of the equipment, so that was not checked.',
    rule: 'Equipment that may be worked on while it is live has a clear space in front of it.',
    sources: [WORKING_SPACE],
    fix: 'Measure depth, width and height and state clear_depth_in, clear_width_in and clear_height_in under site_plan.equipment.',
  },
  'wall.handle-too-high': {
    means: 'The grip of a switch or breaker hangs higher than it may.',
    rule: 'The middle of the grip in its highest position is at most 6 ft 7 in above the floor or ground.',
    sources: [{ document: 'NEC', edition: '2023', place: '404.8(A)', standing: 'read' }],
    fix: 'Hang the enclosure lower, or put the switch lower in it.',
  },
  'wall.meter-height': {
    means: 'The meter hangs higher or lower than the utility asks.',
    rule: 'Utilities publish heights of their meters; the project states those of its own under drawings.meter.',
    sources: [PRACTICE],
    fix: 'Move the meter, or ask the utility to accept its place in writing.',
  },
  'wall.meter-front': {
    means: 'In front of the meter less is clear than the utility asks.',
    rule: 'Utilities publish the space that they want in front of their meters; the project states it under drawings.meter.',
    sources: [PRACTICE],
    fix: 'Clear the space, or ask the utility to accept it in writing.',
  },
  'wall.meter-unknown': {
    means:
      'The project states what the utility asks of its meter and not where the meter is, so that was not compared.',
    rule: 'A rule is compared with what is measured, never with a guess.',
    sources: [PRACTICE],
    fix: 'State bottom_in, height_in and clear_depth_in of the meter under site_plan.equipment.',
  },
}
