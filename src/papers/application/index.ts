export { applicationFacts, type ApplicationFacts, type ApplicationStages } from './application-facts.js'
export { answerText, applicationPaper } from './application-paper.js'
export type { ApplicationAttachment, ApplicationField, ApplicationValues } from './application-values.js'
export { applicationOf, buildApplication } from './build-application.js'
