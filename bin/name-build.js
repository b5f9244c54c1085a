// A step of the build: gives the program its name, the SHA-256 of its files, which every result bears. What it loads beside
// the bundle has exact versions.
const { createHash } = require('node:crypto')
const { existsSync, writeFileSync } = require('node:fs')
const path = require('node:path')
const { dependencies, version } = require('../package.json')

const PLACE = 'gablewatt-build-goes-here'
/** The library runs the same sources. */
const LIBRARY = path.join(__dirname, '../dist/seal/build-id.js')

/** The texts of the bundle with the name of the build in its place. */
function nameBuild(texts) {
  if (!texts.some((text) => text.includes(PLACE))) throw new Error('the bundle has no place for the name of the build')
  const parts = JSON.stringify([version, dependencies, ...texts])
  const build = createHash('sha256').update(parts).digest('hex').slice(0, 16)
  if (existsSync(LIBRARY)) writeFileSync(LIBRARY, `export const BUILD = '${build}'\n`)
  return texts.map((text) => text.replaceAll(PLACE, build))
}

module.exports = { nameBuild }
