import { WORK_SOURCES } from '../../tables/fieldwork/index.js'
import { PRACTICE, type Explanations } from './explanation.js'

/** Findings of the hand-over. */
export const HANDOVER: Explanations = {
  'handover.reading-fails': {
    means: 'A reading of the commissioning tests is outside its limit, or a check did not pass.',
    rule: 'Each test has a limit: open voltage 5 % and less than half a module, currents 5 % between like strings, insulation by the voltage of the string, 2 s after loss of the mains, voltages of rapid shutdown by the edition.',
    sources: [WORK_SOURCES.commissioning, WORK_SOURCES.stringTests],
    fix: 'Switch off, lock, find the cause and measure again. Nothing is handed over with a reading that fails.',
  },
  'handover.reading-to-look-at': {
    means: 'A reading has no limit that could decide, lacks a condition that was not noted, or comes near its limit.',
    rule: 'A reading is held against a limit only with light, temperature and test voltage that belong to it.',
    sources: [WORK_SOURCES.commissioning],
    fix: 'Note what is missing, take the reading again, or have somebody look who knows the system.',
  },
  'handover.not-measured': {
    means: 'Lines of the record have no reading yet.',
    rule: 'The paper has blanks for them, to be filled in by hand.',
    sources: [PRACTICE],
    fix: 'State the readings under commissioning, or fill them in on paper.',
  },
  'handover.serial-missing': {
    means: 'Modules or inverters have no serial number.',
    rule: 'Makers ask for it when a warranty is claimed, and the hand-over file lists it.',
    sources: [WORK_SOURCES.commissioning],
    fix: 'State commissioning.serials, or give a table with --serials (columns kind,unit,serial).',
  },
  'handover.calibration': {
    means:
      'The calibration of an instrument is not stated, is older than a year, or does not cover the day of the tests.',
    rule: 'The record names each instrument with the day of its calibration.',
    sources: [WORK_SOURCES.commissioning],
    fix: 'State calibrated and due, or measure again with another instrument.',
  },
  'handover.emergency-gap': {
    means: 'The sheet for the fire service lacks the address or what turns the system off.',
    rule: 'Nothing on that sheet is guessed.',
    sources: [PRACTICE],
    fix: 'State the key that the finding names, or write it in by hand.',
  },
  'handover.nobody-to-call': {
    means: 'No installer, electrician, utility or authority is stated, so that the owner has nobody to call.',
    rule: 'The page of the owner says whom to call.',
    sources: [PRACTICE],
    fix: 'State them under parties with their telephones, or write them in by hand.',
  },
  'handover.no-warranty': {
    means: 'No warranty is stated.',
    rule: 'Warranties are printed as they are stated; nothing is made up.',
    sources: [PRACTICE],
    fix: 'State proposal.warranties as they are given, or write them in by hand.',
  },
  'handover.not-dated': {
    means: 'The record has no day of the tests.',
    rule: 'A record without a day proves nothing, and no day is taken from the clock.',
    sources: [WORK_SOURCES.commissioning],
    fix: 'State commissioning.date or --date, or write it in by hand.',
  },
}
