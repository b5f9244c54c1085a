// The bundled program, loaded once, run again and again for tests in which the start itself plays no part.
const { loadProgram } = require('../../bin/load-program.js')
const { version } = require('../../package.json')

const program = loadProgram()
const listened = ['stdout', 'stderr'].map((name) => ({ stream: process[name], write: process[name].write }))

process.on('message', async ({ args, cwd, env }) => {
  const written = { stdout: [], stderr: [] }
  process.chdir(cwd)
  for (const key of Object.keys(process.env)) delete process.env[key]
  Object.assign(process.env, env)
  for (const name of ['stdout', 'stderr'])
    process[name].write = (chunk) => {
      written[name].push(Buffer.from(chunk))
      return true
    }
  let exitCode
  try {
    exitCode = await program.main(args, `gablewatt ${version}`)
  } finally {
    for (const { stream, write } of listened) {
      stream.write = write
      stream.removeAllListeners('error')
    }
  }
  const text = (name) => Buffer.concat(written[name]).toString('utf8')
  process.send({ exitCode, stdout: text('stdout'), stderr: text('stderr') })
})
