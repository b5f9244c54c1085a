export { EXPLANATIONS } from './all.js'
export type { Explanation } from './explanation.js'
export { findExplanation } from './find-explanation.js'
export { findTerm, GLOSSARY, type Term } from './glossary.js'
