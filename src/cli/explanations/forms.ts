import { PRACTICE, secondary, type Explanations } from './explanation.js'

const ISO = secondary('ISO 32000-1:2008', '12.7 (interactive forms)')

/** Findings of fillable PDF forms. */
export const FORMS: Explanations = {
  'form.no-value': {
    means: 'A field is to get a value that the project or a stage does not have.',
    rule: 'A field that is mapped is meant to be filled; an empty one would be sent back.',
    sources: [PRACTICE],
    fix: 'State the value in the project, mend the path, or mark the entry optional: true.',
  },
  'form.left-empty': {
    means: 'An optional field stays empty, because there is no value for it.',
    rule: 'The mapping says that this field may stay empty.',
    sources: [PRACTICE],
    fix: 'Nothing, or state the value in the project.',
  },
  'form.wrong-kind': {
    means: 'A value cannot be written into the field in the way that the mapping asks for.',
    rule: 'Numbers take decimals and units, days take date, boxes take true or false, states and choices take their names.',
    sources: [PRACTICE],
    fix: 'Mend format, equals or translate, or take the path of another value.',
  },
  'form.too-long': {
    means: 'A text has more characters than the form takes in this field.',
    rule: 'A field may state a greatest length, and viewers cut what is longer.',
    sources: [ISO],
    fix: 'State a shorter text.',
  },
  'form.not-a-choice': {
    means: 'A value is none of the choices of a drop-down or a list.',
    rule: 'A choice field takes what it offers, but for a drop-down that says it takes other text.',
    sources: [ISO],
    fix: 'Name one of the choices, or say with translate which choice each value is.',
  },
  'form.left-to-person': {
    means: 'A choice or a state would declare or accept something in the name of the person.',
    rule: 'The program signs, dates, declares and accepts nothing for anybody.',
    sources: [PRACTICE],
    fix: 'Take the entry out; who signs fills it by hand.',
  },
  'form.does-not-fit': {
    means: 'A value is in the form, but its place on the page is too small to show it.',
    rule: 'What is cut on paper cannot be read. Letters whose size follows the box are never smaller than 4 pt.',
    sources: [PRACTICE],
    fix: 'State a shorter text, or a smaller size_pt.',
  },
  'form.no-glyph': {
    means: 'A text has a character that neither Helvetica nor the embedded font has.',
    rule: 'A missing character would be drawn as an empty box or as nothing.',
    sources: [PRACTICE],
    fix: 'Write it in Latin, Greek, Cyrillic, Armenian or Georgian letters.',
  },
  'form.not-seen': {
    means: 'A field is filled that has no place on a page, or is hidden.',
    rule: 'Its value is in the file and nowhere on paper.',
    sources: [ISO],
    fix: 'Look whether another field is meant.',
  },
  'form.not-empty': {
    means: 'A field that must stay empty has a value in the form itself.',
    rule: 'The mapping names fields that others fill, such as those of the office.',
    sources: [PRACTICE],
    fix: 'Take an empty copy of the form.',
  },
  'form.required-empty': {
    means: 'The form marks a field as required, and nothing goes into it.',
    rule: 'An office sends back a form with an empty required field, so that nothing is written. Signatures, their dates and declarations are no part of it: they are left to the person and told.',
    sources: [ISO],
    fix: 'Add an entry to the mapping; name the field under by_hand when a person fills it in later, or under must_stay_empty when the office does.',
  },
  'form.left-by-hand': {
    means: 'The mapping leaves these fields to a person, who fills them in later.',
    rule: 'What the form requires and the program does not fill is told, so that it is not forgotten.',
    sources: [PRACTICE],
    fix: 'Fill them in before the form is sent.',
  },
  'form.calculated': {
    means: 'The form works the value of this field out by a script, and scripts do not run here.',
    rule: 'A sum that was not worked out is empty or old.',
    sources: [ISO],
    fix: 'Add an entry with the value, or open the filled form in a viewer that runs its scripts.',
  },
  'form.other-form': {
    means: 'The form has changed since the mapping was written.',
    rule: 'The mapping holds the SHA-256 of its form; a new issue may have other fields under the same names.',
    sources: [PRACTICE],
    fix: 'Compare the fields with fill-form --list, look at the filled form, and put the new SHA-256 into the mapping.',
  },
  'form.left-to-sign': {
    means: 'These fields are signatures, their dates, or declarations, and stay empty.',
    rule: 'They are known by their type, by words of their name or tooltip, and, for dates, by standing beside a signature.',
    sources: [PRACTICE],
    fix: 'Fill them by hand.',
  },
  'form.stage-fails': {
    means: 'A value in the form comes from a stage where checks fail.',
    rule: 'An application should describe a design that holds.',
    sources: [PRACTICE],
    fix: 'Run check-project, mend what fails, and fill the form again.',
  },
}
