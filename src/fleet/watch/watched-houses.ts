import { dirname, join } from 'node:path'
import { LARGEST_METER_BYTES, MOST_HOUSES, readNamedText } from '../../project/index.js'
import { MOST_HEAD_LINES, readTable } from '../../values/index.js'
import { FleetError } from '../fleet-error.js'
import { fileJobs } from '../file-jobs.js'
import type { WatchedHouse } from './watch-types.js'

/**
 * The houses to watch: project files, patterns and folders, or one table with columns `id` and `project` (a path beside the table). The
 * readings of a house are `FOLDER/NAME.csv`, or what the column `production` of the table names in that folder.
 *
 * @throws FleetError when a name leads to nothing, or the table is wrong, with line and column.
 */
export function watchedHouses(named: readonly string[], productionFolder: string): WatchedHouse[] {
  const [table] = named
  if (named.length === 1 && table !== undefined && /\.csv$/iu.test(table)) return housesOfTable(table, productionFolder)
  return fileJobs(named, []).map(({ name, path }) => ({
    name,
    projectPath: path,
    productionPath: join(productionFolder, `${name}.csv`),
  }))
}

function housesOfTable(path: string, folder: string): WatchedHouse[] {
  const table = readTable(readNamedText(path, LARGEST_METER_BYTES, 'latin1'), MOST_HOUSES)
  if (table === undefined)
    throw new FleetError(`${path}: no line with column names among the first ${MOST_HEAD_LINES}; write id,project`, 2)
  const [problem] = table.problems
  if (problem !== undefined) throw new FleetError(`${path}:${problem.line}:${problem.column}  ${problem.message}`, 2)
  const at = (name: string): number => table.header.findIndex(({ text }) => text.trim().toLowerCase() === name)
  const [id, project, production] = [at('id'), at('project'), at('production')]
  if (id < 0 || project < 0) {
    const names = table.header.map(({ text }) => `'${text}'`).join(', ')
    throw new FleetError(
      `${path}:1:1  the table wants columns id and project, and may have production; it has ${names}`,
      2,
    )
  }
  const seen = new Map<string, number>()
  return table.rows.map((row) => {
    const cell = row.cell(id)
    const place = `${path}:${cell?.line ?? 1}:${cell?.column ?? 1}`
    const name = (row.texts[id] ?? '').trim()
    const file = (row.texts[project] ?? '').trim()
    if (name === '') throw new FleetError(`${place}  id is empty; give each house a name of its own`, 2)
    if (/[/\\]|^\.{1,2}$/u.test(name))
      throw new FleetError(`${place}  id '${name}' cannot be the name of a file; write it without / and \\`, 2)
    if (seen.has(name))
      throw new FleetError(
        `${place}  id '${name}' stands on line ${seen.get(name)} too; give each house a name of its own`,
        2,
      )
    if (file === '') throw new FleetError(`${place}  project of '${name}' is empty; name its project file`, 2)
    seen.set(name, cell?.line ?? 1)
    const readings = production < 0 ? '' : (row.texts[production] ?? '').trim()
    return {
      name,
      projectPath: join(dirname(path), file),
      productionPath: join(folder, readings === '' ? `${name}.csv` : readings),
    }
  })
}
