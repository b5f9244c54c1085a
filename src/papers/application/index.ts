export { applicationFacts, type ApplicationFacts, type ApplicationStages } from './application-facts.js'
export type { ApplicationAttachment, ApplicationField, ApplicationValues } from './application-values.js'
export { applicationOf, buildApplication } from './build-application.js'
