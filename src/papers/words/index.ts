export { EN, type WordKey } from './en.js'
export { ES } from './es.js'
export { PAPER_LANGUAGES, speakerOf, type PaperLanguage, type Speaker } from './speaker.js'
