import { PRACTICE, type Explanations } from './explanation.js'

const RULE =
  'What a program put into a file so that it runs is nobody\u2019s statement. The marker !made_up stands before such a value, and a result that rests on it says so until somebody has looked the value up and taken the marker away.'

/** Findings about values that nobody stated. */
export const MADE_UP: Explanations = {
  'project.made-up-safety': {
    means:
      'The named values bear the marker !made_up and are about safety: somebody could be hurt where they are wrong, be it by wind, snow, current or a roof that does not bear. The result was worked out with them and shows how it will look, not what to build.',
    rule: RULE,
    sources: [PRACTICE],
    fix: 'Look each one up (`gablewatt check-project` lists them with the stages that read them), put what is true in its place and take !made_up away. Sheets are stamped DRAFT until then.',
  },
  'project.made-up': {
    means:
      'The named values bear the marker !made_up. Nobody is hurt where they are wrong, but energy, money or words on the sheets are.',
    rule: RULE,
    sources: [PRACTICE],
    fix: 'Put your own in their place and take !made_up away; where the value happens to be true, take the marker away alone.',
  },
}
