// A step of the build: runs the bundled program on the demo house and keeps its compiled form for quick starts.
const { readFileSync, renameSync, writeFileSync } = require('node:fs')
const path = require('node:path')
const { nameBuild } = require('./name-build.js')
const { FILES, FOLDER, compiledPlace, runProgram, sealOf } = require('./load-program.js')

const texts = nameBuild(FILES.map((file) => readFileSync(path.join(FOLDER, file), 'latin1')))
// So that a start can read the program as bytes.
// oxlint-disable-next-line no-control-regex
if (texts.some((text) => /[^\x00-\x7F]/u.test(text))) throw new Error('the bundle is not plain ASCII')
const program = new Map(FILES.map((file, index) => [file, Buffer.from(texts[index], 'latin1')]))
for (const [file, text] of program) writeWhole(path.join(FOLDER, file), text)

const house = path.join(__dirname, '../examples/lark-hollow.yaml')
const runs = [
  ['estimate-yield', house],
  ['check-project', house],
  ['estimate-yield', house, '--json'],
]

/** From the text alone, never from an older compiled form. */
async function keepCompiled() {
  const {
    program: { main },
    scripts,
  } = runProgram((file) => ({ text: program.get(file), form: undefined }))
  const write = process.stdout.write.bind(process.stdout)
  process.stdout.write = () => true
  for (const args of runs) {
    const exitCode = await main([...args, '--quiet'], 'gablewatt')
    if (exitCode > 1) throw new Error(`${args.join(' ')} ended with ${exitCode}`)
  }
  process.stdout.write = write
  for (const [file, script] of scripts) {
    const form = script.createCachedData()
    writeWhole(compiledPlace(file), Buffer.concat([Buffer.from(sealOf(program.get(file), form), 'latin1'), form]))
  }
}

/** A start in the meantime sees the old file or the new one. */
function writeWhole(path, bytes) {
  writeFileSync(`${path}.new`, bytes)
  renameSync(`${path}.new`, path)
}

void keepCompiled()
