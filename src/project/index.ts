export type * from './project-types.generated.js'
