import { APPLICATION_SOURCES } from '../../tables/utility/index.js'
import { PRACTICE, type Explanations } from './explanation.js'

/** Findings of the application for interconnection. */
export const APPLICATION: Explanations = {
  'application.field-missing': {
    means: 'Applications for interconnection ask for something that the project does not state.',
    rule: 'An application that is not complete is sent back, and the times of the utility begin anew.',
    sources: [APPLICATION_SOURCES.fields],
    fix: 'State the key that the finding names, or fill the line by hand. Nothing is guessed.',
  },
  'application.stage-missing': {
    means: 'A stage that the application takes figures from cannot run.',
    rule: 'Its figures are then missing on the sheet.',
    sources: [PRACTICE],
    fix: 'Supply what the stage misses.',
  },
  'application.stage-fails': {
    means: 'The application rests on a stage where checks fail.',
    rule: 'An application should describe a design that holds.',
    sources: [PRACTICE],
    fix: 'Run the stage, mend what fails, and write the application again.',
  },
  'application.above-level': {
    means: 'The rated AC output is above the size up to which a short procedure holds.',
    rule: 'Above it other forms, fees and times hold: 10 kW in the federal inverter process, 50 kW in New York, or what the utility says.',
    sources: [APPLICATION_SOURCES.fields],
    fix: 'Ask the utility which procedure it takes; state utility_application.size_level_kw.',
  },
  'application.no-power-control': {
    means: 'The application says that nothing or little is exported, and nothing in the project could hold that.',
    rule: 'Utilities take limited or no export only with a certified power control system.',
    sources: [APPLICATION_SOURCES.fields],
    fix: 'State electrical.power_control with its document, or apply for export.',
  },
  'application.export-limit-without-mode': {
    means: 'An export limit is stated for a system that is not to limit its export.',
    rule: 'The operating mode and its limit have to agree.',
    sources: [PRACTICE],
    fix: 'State operating_mode: limited_export, or take the limit out.',
  },
  'application.export-limit-idle': {
    means: 'The export limit is not below what the inverters can give.',
    rule: 'Such a limit limits nothing, and the utility will ask what is meant.',
    sources: [PRACTICE],
    fix: 'State the limit of the utility, or apply for export.',
  },
  'application.energy-above-use': {
    means: 'The system gives more energy in a year than the utility allows for the use of the house.',
    rule: 'Rules for net metering limit the size to a share of the yearly use, often 100 to 120 %.',
    sources: [APPLICATION_SOURCES.energyOfUse],
    fix: 'Ask for the limit and state utility_application.size_limit_pct; show future use, or take fewer modules.',
  },
  'application.contradiction': {
    means: 'Two answers of the application contradict each other.',
    rule: 'A utility sends such an application back.',
    sources: [PRACTICE],
    fix: 'Mend the answer that is wrong.',
  },
  'application.listing-not-sb': {
    means: 'The listing of an inverter is not UL 1741 with Supplement SB.',
    rule: 'Since 2022 to 2023 states ask for SB, which is tested by IEEE 1547.1-2020.',
    sources: [APPLICATION_SOURCES.categories],
    fix: 'Look at the certificate, and ask the utility which listing it takes.',
  },
  'application.category-unusual': {
    means: 'An inverter has other performance categories than those that are usual for PV.',
    rule: 'Utilities that ask for categories mostly ask for B and III.',
    sources: [APPLICATION_SOURCES.categories],
    fix: 'Ask the utility which categories it takes.',
  },
}
