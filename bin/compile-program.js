// A step of the build: runs the bundled program on the demo house and keeps its compiled form for quick starts.
import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { CACHE, loadProgram } from './load-program.js'

const house = fileURLToPath(new URL('../examples/lark-hollow.yaml', import.meta.url))
const { main, script } = loadProgram()
const write = process.stdout.write.bind(process.stdout)
process.stdout.write = () => true
for (const args of [
  ['estimate-yield', house],
  ['check-project', house],
  ['estimate-yield', house, '--json'],
]) {
  await main([...args, '--quiet'], 'gablewatt')
}
process.stdout.write = write
writeFileSync(CACHE, script.createCachedData())
