export { compiledEngine, engine, scriptEngine, type Engine } from './engine.js'
export * as LAYOUT from './layout.js'
export { meanClippedW } from './mean-clipped.js'
export { powerOf } from './module-power.js'
