export { compiledEngine, engine, scriptEngine, type Engine } from './engine.js'
export * as LAYOUT from './layout.js'
