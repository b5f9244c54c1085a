// A worker thread of a fleet.
const { loadProgram } = require('./load-program.js')

const program = loadProgram()
if (program === undefined) throw new Error('the program is not built: run `npm run build` in its folder')
void program.work()
