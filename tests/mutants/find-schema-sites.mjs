const LIMIT =
  /^(\s*(?:minimum|maximum|exclusiveMinimum|exclusiveMaximum|minItems|maxItems|maxLength|minLength|minProperties): )(-?[\d.]+)\s*$/

/**
 * Small faults in a part of the schema: a limit that is wrong, a limit that is not there.
 * @param {string} file @param {string} source YAML
 */
export function findSchemaSites(file, source) {
  const sites = []
  let at = 0
  for (const [index, line] of source.split('\n').entries()) {
    const limit = LIMIT.exec(line)
    if (limit !== null) {
      const from = at + limit[1].length
      const value = Number(limit[2])
      const wrong = value === 0 ? '1' : String(Number((value * 1.25 + Math.sign(value)).toPrecision(6)))
      sites.push({
        file,
        kind: 'number',
        line: index + 1,
        edit: [from, from + limit[2].length, Number.isInteger(value) ? String(Math.round(Number(wrong))) : wrong],
      })
      sites.push({ file, kind: 'dropped check', line: index + 1, edit: [at, at + line.length, ''] })
    }
    at += line.length + 1
  }
  return sites
}
