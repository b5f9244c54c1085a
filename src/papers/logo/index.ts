export { readLogo } from './read-logo.js'
