// A step of the build: runs the bundled program on the demo house and keeps its compiled form for quick starts.
const { readFileSync, writeFileSync } = require('node:fs')
const { join } = require('node:path')
const { CACHE, loadProgram, PROGRAM } = require('./load-program.js')

// As one function, so that a start takes the text as it is; plain characters only, so that it can be read as bytes.
const text = readFileSync(PROGRAM, 'utf8')
// oxlint-disable-next-line no-control-regex
if (/[^\x00-\x7F]/u.test(text)) throw new Error('the bundle is not plain ASCII')
writeFileSync(PROGRAM, `(function (exports, require, module, __importMetaUrl) {${text}\n})`)

const house = join(__dirname, '../examples/lark-hollow.yaml')
const runs = [
  ['estimate-yield', house],
  ['check-project', house],
  ['estimate-yield', house, '--json'],
]

async function keepCompiled() {
  const { main, script } = loadProgram()
  const write = process.stdout.write.bind(process.stdout)
  process.stdout.write = () => true
  for (const args of runs) await main([...args, '--quiet'], 'gablewatt')
  process.stdout.write = write
  writeFileSync(CACHE, script.createCachedData())
}

void keepCompiled()
