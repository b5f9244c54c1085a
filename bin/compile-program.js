// A step of the build: runs the bundled program on the demo house and keeps its compiled form for quick starts.
const { readFileSync, renameSync, writeFileSync } = require('node:fs')
const path = require('node:path')
const { nameBuild } = require('./name-build.js')
const { COMPILED, PROGRAM, runProgram, sealOf } = require('./load-program.js')

// As one function, so that a start takes the text as it is; plain characters only, so that it can be read as bytes.
const text = nameBuild(readFileSync(PROGRAM, 'utf8'))
// oxlint-disable-next-line no-control-regex
if (/[^\x00-\x7F]/u.test(text)) throw new Error('the bundle is not plain ASCII')
const program = Buffer.from(`(function (exports, require, module, __importMetaUrl) {${text}\n})`, 'latin1')
writeWhole(PROGRAM, program)

const house = path.join(__dirname, '../examples/lark-hollow.yaml')
const runs = [
  ['estimate-yield', house],
  ['check-project', house],
  ['estimate-yield', house, '--json'],
]

/** From the text alone, never from an older compiled form. */
async function keepCompiled() {
  const { main, script } = runProgram(program, undefined)
  const write = process.stdout.write.bind(process.stdout)
  process.stdout.write = () => true
  for (const args of runs) await main([...args, '--quiet'], 'gablewatt')
  process.stdout.write = write
  const form = script.createCachedData()
  writeWhole(COMPILED, Buffer.concat([sealOf(program, form), form]))
}

/** A start in the meantime sees the old file or the new one. */
function writeWhole(path, bytes) {
  writeFileSync(`${path}.new`, bytes)
  renameSync(`${path}.new`, path)
}

void keepCompiled()
