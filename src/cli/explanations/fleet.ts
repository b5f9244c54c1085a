import { PRACTICE, type Explanations } from './explanation.js'

/** Findings of a run over many projects. */
export const FLEET: Explanations = {
  'fleet.invalid': {
    means: 'One project of the fleet cannot be worked with; the others went on.',
    rule: 'Each row or file is checked like a single project.',
    sources: [PRACTICE],
    fix: 'Run `gablewatt check-project` on it, or correct the cell of the table that the message names.',
  },
  'fleet.unreadable': {
    means: 'A file of one project of the fleet cannot be read; the others went on.',
    rule: 'Each project names its own equipment and weather files.',
    sources: [PRACTICE],
    fix: 'Check the path and the permissions of the file.',
  },
  'fleet.defect': {
    means: 'The program itself failed on one project of the fleet; the others went on.',
    rule: 'This is a defect of gablewatt and not of the project.',
    sources: [PRACTICE],
    fix: 'Run that project alone with GABLEWATT_DEBUG=1, and report what it prints.',
  },
  'fleet.more': {
    means: 'There are more findings than the report holds.',
    rule: 'A report over hundreds of houses keeps the first ones, so that memory stays small.',
    sources: [PRACTICE],
    fix: 'Use --jsonl, which has all of them, a line a project.',
  },
  'fleet.not-in-price-list': {
    means: 'What this house needs bought cannot be worked out, so that the price list of the fleet may lack items.',
    rule: 'The list of --write price-list is the union of what all houses of the run need.',
    sources: [PRACTICE],
    fix: 'Mend what the message names, and run it again.',
  },
  'fleet.other-build': {
    means: 'What this house came to was kept by another build of the program, and --use-anyway took it.',
    rule: 'Two builds may work the same house out differently; a result bears the build that made it.',
    sources: [PRACTICE],
    fix: 'Run the fleet anew without --resume, so that one build works all houses out.',
  },
  'use.other-build': {
    means: 'A stage was not worked out anew: its result is of another version or build, and --use-anyway took it.',
    rule: 'Two builds may work the same project out differently; a result bears the build that made it.',
    sources: [PRACTICE],
    fix: 'Make the result again with this build, or leave --use out.',
  },
}
