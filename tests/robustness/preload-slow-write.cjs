// Loaded before the program: every file is written by halves, with a long rest between them.
const fs = require('node:fs')
const { writeSync } = fs
fs.writeSync = (file, bytes, offset = 0, ...rest) => {
  if (file <= 2 || typeof bytes === 'string') return writeSync(file, bytes, offset, ...rest)
  if (offset > 0) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20_000)
  return writeSync(file, bytes, offset, Math.ceil((bytes.length - offset) / 2))
}
