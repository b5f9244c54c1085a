// In the bundle, the drawer of tables measures text as the lines of its cells were wrapped, and no script of the world
// stands askew; its own measure also compiles a pattern of ten thousand characters in each start.
module.exports = require('../src/cli/output/wrap.ts').displayWidth
