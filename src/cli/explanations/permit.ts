import { PRACTICE, type Explanations } from './explanation.js'
import { INSULATION_SOURCE } from '../../tables/fieldwork/index.js'

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
}
