// Each thread tells, when it takes it, which package the program took from node_modules.
const { writeSync } = require('node:fs')
const Module = require('node:module')
// oxlint-disable-next-line no-underscore-dangle
const load = Module._load
// oxlint-disable-next-line no-underscore-dangle
Module._load = function (name, ...rest) {
  if (/^[@a-z]/u.test(name) && !Module.isBuiltin(name)) writeSync(2, `package ${name}\n`)
  return load.call(this, name, ...rest)
}
