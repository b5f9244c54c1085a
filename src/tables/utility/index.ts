export { ATTACHMENTS, type AttachmentRule, type AttachmentSource } from './attachments.js'
export { APPLICATION_CLOCKS, CLOCK_SOURCES, SIZE_LEVELS, type ApplicationClock } from './application-clocks.js'
export { STANDARD_FACTS, type StandardFact } from './interconnection-standards.js'
export { APPLICATION_LIMITS, APPLICATION_SOURCES } from './application-limits.js'
