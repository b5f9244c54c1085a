// A thread with limits of memory and time for files of strangers.
const { loadProgram } = require('./load-program.js')

const program = loadProgram()
if (program === undefined) throw new Error('the program is not built: run `npm run build` in its folder')
void program.workOnForeign()
