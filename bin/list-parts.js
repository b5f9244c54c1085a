// A step of the build: the list of the parts that the program is made of, as CycloneDX 1.5 in JSON, beside the program. It holds no
// date and no random number, so that two builds of the same sources write the same list.
const { createHash } = require('node:crypto')
const { readFileSync, writeFileSync } = require('node:fs')
const path = require('node:path')

const root = path.join(__dirname, '..')
const { name, version, description } = require('../package.json')
const { packages } = require('../package-lock.json')
const PLACE = 'node_modules/'
/** Licences that a package states in words of its own. */
const NOT_SPDX = /^see /iu

/** A package as npm resolved it: what is installed with the program, at whatever depth. */
function component([place, part]) {
  const name = place.slice(place.lastIndexOf(PLACE) + PLACE.length)
  const stated = part.license ?? JSON.parse(readFileSync(path.join(root, place, 'package.json'), 'utf8')).license
  const [algorithm, digest] = (part.integrity ?? '').split('-')
  if (algorithm !== 'sha512') throw new Error(`${name} has no SHA-512 in package-lock.json`)
  return {
    type: 'library',
    'bom-ref': `${name}@${part.version}`,
    name,
    version: part.version,
    scope: part.optional === true ? 'optional' : 'required',
    hashes: [{ alg: 'SHA-512', content: Buffer.from(digest, 'base64').toString('hex') }],
    ...(stated === undefined
      ? {}
      : { licenses: [{ license: NOT_SPDX.test(stated) ? { name: stated } : { id: stated } }] }),
    purl: `pkg:npm/${name.replace('@', '%40')}@${part.version}`,
  }
}

/** What each part asks for, at the place that Node finds it from. */
function dependency([place, part]) {
  const asked = Object.keys({ ...part.dependencies, ...part.optionalDependencies })
  return { ref: refOf(place, part), dependsOn: asked.flatMap((one) => found(place, one)).toSorted() }
}

function refOf(place, part) {
  return place === '' ? `${name}@${version}` : `${place.slice(place.lastIndexOf(PLACE) + PLACE.length)}@${part.version}`
}

/** The nearest folder of packages, going outwards, that holds the name. */
function found(place, asked) {
  for (let from = place; ; from = from.slice(0, Math.max(0, from.lastIndexOf(`/${PLACE}`)))) {
    const at = `${from === '' ? '' : `${from}/`}${PLACE}${asked}`
    if (packages[at] !== undefined) return [refOf(at, packages[at])]
    if (from === '') return []
  }
}

const shipped = Object.entries(packages).filter(([place, part]) => place === '' || part.dev !== true)
/** Over both files of the program, one after the other. */
const digest = createHash('sha256')
for (const file of ['main.cjs', 'rest.cjs']) digest.update(readFileSync(path.join(root, 'dist/program', file)))
const list = {
  bomFormat: 'CycloneDX',
  specVersion: '1.5',
  version: 1,
  metadata: {
    component: {
      type: 'application',
      'bom-ref': `${name}@${version}`,
      name,
      version,
      description,
      hashes: [{ alg: 'SHA-256', content: digest.digest('hex') }],
    },
  },
  components: shipped.filter(([place]) => place !== '').map(component),
  dependencies: shipped.map(dependency),
}
writeFileSync(path.join(root, 'dist/program/parts.cdx.json'), `${JSON.stringify(list, null, 1)}\n`)
