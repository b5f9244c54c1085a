// A step of the build: the licences of everything inside the bundle, and of the data and fonts, in one text.
const { readdirSync, readFileSync, unlinkSync, writeFileSync } = require('node:fs')
const path = require('node:path')

const root = path.join(__dirname, '..')
const meta = path.join(root, 'dist/program/packages.json')
/** @type {string[]} */
const inputs = JSON.parse(readFileSync(meta, 'utf8'))
const bundled = inputs.flatMap((path) => /^.*node_modules\/((?:@[^/]+\/)?[^/]+)/u.exec(path)?.[1] ?? [])
const texts = [...new Set([...bundled, 'dejavu-fonts-ttf'])].toSorted().map((name) => {
  const folder = path.join(root, 'node_modules', name)
  const file = readdirSync(folder).find((one) => /^licen[cs]e(?:\.\w+)?$/iu.test(one))
  const { version, license, author } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'))
  if (license === undefined && file === undefined) throw new Error(`${name} states no licence`)
  const by = typeof author === 'string' ? author : (author?.name ?? 'an author it does not name')
  const text =
    file === undefined
      ? `The package holds no licence text; it is by ${by}.`
      : readFileSync(path.join(folder, file), 'utf8')
  return `${name} ${version} (${license ?? 'see below'})\n\n${text.trim()}\n`
})
const own = readFileSync(path.join(root, 'src/tables/LICENSES.md'), 'utf8')
writeFileSync(path.join(root, 'dist/program/LICENSES.txt'), [own, ...texts].join(`\n${'-'.repeat(100)}\n\n`))
unlinkSync(meta)
