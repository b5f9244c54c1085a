import { describe, expect, test } from 'vitest'
import { flattenSheet } from '../../src/drawings/index.js'
import { planMarkdown, planSheets, type WorkPlanValues } from '../../src/fieldwork/index.js'
import { runHouse } from '../../src/house/index.js'
import type { Project } from '../../src/project/index.js'
import { microHouse, stringHouse } from '../drawings/demo-packet.js'

const planOf = async (project: Project, cellC?: number) =>
  await runHouse({ project }, { wishes: cellC === undefined ? {} : { cellC } }).work()
const linesOf = (values: WorkPlanValues, id: string): string[] =>
  (values.steps.find((step) => step.id === id)?.tasks ?? []).map(({ says, source }) => `${says} | ${source}`)
const stopOf = (values: WorkPlanValues, id: string): string | null | undefined =>
  values.steps.find((step) => step.id === id)?.stop

/** The house with one part of its equipment changed. */
function withPart(
  project: Project,
  kind: 'modules' | 'mounts' | 'rails' | 'inverters',
  id: string,
  change: object,
): Project {
  const parts: Readonly<Record<string, object>> = project.equipment[kind] ?? {}
  return { ...project, equipment: { ...project.equipment, [kind]: { ...parts, [id]: { ...parts[id], ...change } } } }
}

describe('what a stage could not tell', () => {
  test('a project without structure: the mounts have no numbers, and nothing is drilled', async () => {
    const { structure: _, ...bare } = microHouse()
    const { values, findings } = await planOf(bare, 25)
    const finding = findings.find(({ id }) => id === 'work.space-mounts-missing')
    expect(finding?.severity).toBe('warning')
    expect(finding?.message).toMatch(/^the plan lacks the numbers of space-mounts: \S/u)
    expect(findings.some(({ id }) => id === 'work.size-wire-missing')).toBe(false)
    for (const id of ['roof.layout', 'roof.mounts', 'roof.rails'])
      expect(stopOf(values, id)).toBe(
        `do not begin: space-mounts cannot run (${finding?.where}: ${finding?.message.replace('the plan lacks the numbers of space-mounts: ', '')})`,
      )
    for (const id of ['roof.bonding', 'roof.raceway', 'equipment.labels']) expect(stopOf(values, id)).toBeNull()
    expect(linesOf(values, 'roof.layout')).toEqual([])
    expect(linesOf(values, 'roof.mounts')[0]).toMatch(/^flashing goes under the course above/u)
    expect(values.mounts).toEqual([])
    const said = JSON.stringify(values.steps)
    for (const words of [
      '"what":"lead holes"',
      'visible, spacing and free rail ends',
      'when 15 modules lie',
      'rafters 2x6',
    ])
      expect(said).not.toContain(words)
    const materials = values.steps.find(({ id }) => id === 'before.materials')?.quantities.map(({ what }) => what)
    expect(materials).toEqual(['modules Invented M410, array south', 'circuits', 'raceways'])
  })

  test('a project without an electrical part: nothing is wired, labelled or switched on by numbers', async () => {
    const { electrical: _, ...bare } = microHouse()
    const { values, findings } = await planOf(bare, 25)
    expect(findings.find(({ id }) => id === 'work.size-wire-missing')?.message).toMatch(
      /^the plan lacks the numbers of size-wire: \S/u,
    )
    for (const id of [
      'roof.bonding',
      'roof.raceway',
      'equipment.terminations',
      'equipment.labels',
      'test.dead',
      'on.tests',
    ])
      expect([id, stopOf(values, id)?.startsWith('do not begin: size-wire cannot run (')]).toEqual([id, true])
    expect(stopOf(values, 'roof.layout')).toMatch(/^a second person checks three mounts/u)
    const said = JSON.stringify(values.steps)
    for (const words of [
      'breaker 20 A',
      'panel: rule',
      'labels in place, printed',
      'the connection: ',
      'circuit south_1',
      'AWG',
    ])
      expect(said).not.toContain(words)
    expect(linesOf(values, 'equipment.labels')).toEqual([])
    // Craft stays, without a section of a code that nobody sized by.
    expect(linesOf(values, 'equipment.modules')).toContain(
      'begin at the lower row; leads are clipped so that none touches the roof | ',
    )
  })

  test('a house without parties and framing names whom to ask, and leaves room for what is not stated', async () => {
    const base = microHouse()
    const { parties: _, ...bare } = base
    const {
      nominal_size: __,
      spacing_in: ___,
      first_offset_in: ____,
      ...framing
    } = base.structure?.framing?.['south'] ?? {
      kind: 'rafter' as const,
    }
    const { values } = await planOf({ ...bare, structure: { ...base.structure, framing: { south: framing } } }, 25)
    expect(linesOf(values, 'before.utility')[0]).toContain('application to the utility with')
    expect(linesOf(values, 'before.permit')[0]).toContain('at the building department and')
    expect(linesOf(values, 'finish.permission')[0]).toContain('signed card to the utility;')
    expect(linesOf(values, 'before.look')[0]).toBe(
      'south: rafters (size not stated) at (spacing not stated), first at (not stated) from the left end of the eave: found so from the attic | project file',
    )
  })
})

describe('numbers of the equipment file', () => {
  test('a lead hole is that of the mount, else between the limits for the wood', async () => {
    const base = microHouse()
    const { lead_hole_in: _, ...lag } = base.equipment.mounts?.['foot']?.lag ?? { size: '5/16', length_in: 5, count: 1 }
    const house = runHouse({ project: withPart(base, 'mounts', 'foot', { lag }) }, { wishes: { cellC: 25 } })
    const { values } = await house.work()
    const { lag: limits } = (await house.mounts()).values
    expect(linesOf(values, 'roof.layout').at(-1)).toBe(
      `drill with a bit between ${limits?.lead_hole_least_in.toFixed(3)} and ${limits?.lead_hole_most_in.toFixed(3)} in, square to the roof; a hole that misses the wood is sealed and flashed, not used | NDS, 2018, 12.1.4.2 (from memory, unverified)`,
    )
  })

  test('torques are those of mount, clamp, panel and string inverter', async () => {
    const base = stringHouse()
    const clamp = { ...base.equipment.rails?.['rail40']?.clamp, torque_lb_in: 120 }
    const project = withPart(
      withPart(withPart(base, 'mounts', 'foot', { torque_lb_in: 180 }), 'rails', 'rail40', { clamp }),
      'inverters',
      's6000',
      { terminal_torque_lb_in: 15 },
    )
    const panel = { ...base.electrical?.panel, terminal_torque_lb_in: 250 }
    const { values } = await planOf({ ...project, electrical: { ...base.electrical, panel } }, 25)
    const torques = values.steps
      .flatMap(({ tasks }) => tasks.map(({ says }) => says))
      .filter((says) => says.startsWith('torque'))
    expect(torques).toEqual([
      'torque of the bolt from rail to mount: 180 lb-in (15.0 lb-ft)',
      'torque of the clamps: 120 lb-in (10.0 lb-ft)',
      'torque of the terminals in the panel: 250 lb-in (20.8 lb-ft)',
      'torque of the terminals of Invented string 6000: 15 lb-in (1.3 lb-ft)',
    ])
  })

  test('the short-circuit current is corrected for the temperature where its coefficient is stated', async () => {
    const { values } = await planOf(withPart(stringHouse(), 'modules', 'm410', { isc_temp_coeff_pct_per_c: 0.05 }), 25)
    expect(
      linesOf(values, 'test.strings').filter((line) => line.startsWith('string 1') && line.includes(' A x G '))[0],
    ).toMatch(
      /^string 1 of array south: 13\.87 A x G \/ 1000 W\/m2 x \(1 \+ 0\.0005 \(T - 25 C\)\), 11\.10 A at 800 W\/m2 and 25 C; read: ______ A at ______ W\/m2 \|/u,
    )
    expect(values.currents[0]).toEqual({
      what: 'string 1 of array south',
      isc_a: 13.87,
      imp_a: 13.02,
      isc_pct_per_c: 0.05,
    })
  })

  test('open voltages at the temperatures of the table, or of the day', async () => {
    const { values } = await planOf(stringHouse())
    // 37.4 V (1 - 0.27 % x (T - 25)); a string of 8.
    const at = (cellC: number): number => 37.4 * (1 - 0.0027 * (cellC - 25))
    expect(values.readings.filter(({ modules }) => modules === 1).map(({ cell_c: cell }) => cell)).toEqual([
      -10, 0, 10, 25, 40, 55,
    ])
    for (const {
      what,
      modules,
      cell_c: cell,
      voc_v: volts,
      low_v: low,
      high_v: high,
      one_module_less_v: less,
    } of values.readings) {
      expect(volts).toBeCloseTo(modules * at(cell), 9)
      expect(high - volts).toBeCloseTo(0.05 * volts, 9)
      expect(volts - low).toBeCloseTo(0.05 * volts, 9)
      if (modules === 1) expect([what, less]).toEqual(['module Invented M410', null])
      else expect(less ?? 0).toBeCloseTo((modules - 1) * at(cell), 9)
    }
    const volts = await planOf(withPart(stringHouse(), 'modules', 'm410', { voc_temp_coeff_v_per_c: -0.1 }), 45)
    expect(volts.values.readings.map(({ voc_v: each }) => each.toFixed(2))).toEqual(['35.40', '283.20', '247.80'])
    const step = volts.worksheet.find(({ id }) => id === 'work.voc.m410.45-c')
    expect(step?.inputs.map(({ value, unit }) => [value, unit])).toEqual([
      [37.4, 'V'],
      [-0.1, 'V/C'],
      [45, 'C'],
    ])
    expect(step?.result.value).toBeCloseTo(35.4, 9)
  })

  test('a module without a coefficient of its voltage is refused with its place', async () => {
    const base = microHouse()
    const { voc_temp_coeff_pct_per_c: _, ...m410 } = base.equipment.modules?.['m410'] ?? raise()
    const { electrical: __, ...bare } = base
    await expect(planOf({ ...bare, equipment: { ...base.equipment, modules: { m410 } } }, 25)).rejects.toMatchObject({
      where: 'equipment.modules.m410.voc_temp_coeff_pct_per_c',
    })
  })

  test('raceways of PVC say how their fitting is set, and how far it moves', async () => {
    const base = microHouse()
    const home = base.electrical?.runs?.['home'] ?? raise()
    const runs = {
      ...base.electrical?.runs,
      home: {
        ...home,
        segments: {
          roof: { location: 'roof' as const, height_above_roof_in: 1, length_ft: 40, raceway: 'PVC 80' as const },
        },
      },
    }
    const house = runHouse(
      { project: { ...base, electrical: { ...base.electrical, runs } } },
      { wishes: { cellC: 25 } },
    )
    const { values } = await house.work()
    const pvc = (await house.wire()).values.raceways.find(({ id }) => id === 'home.roof')
    expect(pvc?.expansion_fitting).toBe(true)
    const moves = Math.round((pvc?.length_change_in ?? 0) * 16) / 16
    const told = linesOf(values, 'roof.raceway').find((line) => line.includes('expansion fitting')) ?? ''
    const [, whole = '0', over = '0', under = '1'] =
      /moves (?:(\d+)-)?(?:(\d+)\/)?(\d+) in over the year/u.exec(told) ?? []
    expect(told).toMatch(
      /^home\.roof: expansion fitting set for today's temperature; it moves \S+ in over the year \| NEC, 2020, 352\.44/u,
    )
    expect(over === '0' ? Number(under) : Number(whole) + Number(over) / Number(under)).toBe(moves)
    expect(linesOf(values, 'roof.raceway').filter((line) => line.includes('expansion'))).toHaveLength(1)
  })
})

describe('what the code of the place asks for', () => {
  test('the array has an electrode of its own where the edition asks for it', async () => {
    const base = microHouse()
    const told = async (
      electrical: 'NEC 2014' | 'NEC 2020',
      electrode: 'rod' | 'within_6_ft_of_premises_electrode' | undefined,
    ) => {
      const stated = electrode === undefined ? {} : { array_electrode: electrode, array_electrode_run_ft: 40 }
      const { values } = await planOf(
        { ...base, codes: { ...base.codes, electrical }, electrical: { ...base.electrical, ...stated } },
        25,
      )
      return linesOf(values, 'roof.bonding').filter((line) => line.includes('electrode'))
    }
    // 690.47(D) of 2014 requires it; 690.47(B) of 2020 permits it. A rod is joined by 6 AWG: 690.47(D), 250.66(A).
    const source = 'NEC, 2014, 690.47(D) required, auxiliary (secondary source)'
    const others = (await told('NEC 2020', undefined)).length
    expect((await told('NEC 2014', 'rod')).slice(others)).toEqual([
      `electrode conductor 6 AWG: copper, in one piece or irreversibly spliced (250.64(C)) | ${source}`,
    ])
    expect((await told('NEC 2014', undefined)).slice(others)).toEqual([
      `this edition asks for a grounding electrode at the array and the project has none: drive a rod, or show that the array is within 6 ft of the premises electrode | ${source}`,
    ])
    expect((await told('NEC 2014', 'within_6_ft_of_premises_electrode')).slice(others)).toEqual([
      `electrode: the array is within 6 ft of that of the premises; measure it | ${source}`,
    ])
  })

  test('a slope of 4 in 12 is not steep, more is; skylights are named; eaves without a height have no ladder', async () => {
    const base = microHouse()
    const { south } = base.roof_planes
    if (south === undefined) throw new Error('no plane')
    const { eave_height_ft: _, ...plane } = south
    const light = { x_ft: 34, y_ft: 3, width_ft: 2, length_ft: 3, height_ft: 0.4, clearance_in: 6 }
    const of = async (pitch: number) =>
      linesOf(
        (
          await planOf(
            {
              ...base,
              roof_planes: {
                south: {
                  ...plane,
                  pitch_in_12: pitch,
                  obstructions: { ...south.obstructions, bath: { kind: 'skylight', ...light } },
                },
              },
            },
            25,
          )
        ).values,
        'before.safety',
      )
    const [flat, steep] = [await of(4), await of(4.5)]
    expect(flat.some((line) => line.startsWith('steeper than'))).toBe(false)
    expect(steep.some((line) => line.startsWith('steeper than 4 in 12 (south):'))).toBe(true)
    expect(flat.some((line) => line.startsWith('skylights (south: bath) and holes 6 ft or more'))).toBe(true)
    expect(flat.some((line) => line.includes('ladder at least'))).toBe(false)
  })
})

describe('the plan as sheets and as Markdown', () => {
  const cautions = ['A fall kills (invented).']
  const gaps = ['the plan lacks the rails (invented)']

  test('every line stands once, in order, in boxes to tick, inside the margins', async () => {
    const { values } = await planOf(stringHouse(), 25)
    const sheets = planSheets('Lark Hollow', '2026-03-02', values, cautions, gaps)
    expect(sheets.map(({ id }) => id)).toEqual(sheets.map((_, index) => `W-${String(index + 1).padStart(3, '0')}`))
    const flat = (text: string): string => text.replaceAll(/\s+/gu, ' ').trim()
    let all = ''
    let boxes = 0
    for (const [index, sheet] of sheets.entries()) {
      expect([sheet.size.widthPt, sheet.size.heightPt]).toEqual([612, 792])
      const { marks, collisions } = flattenSheet(sheet)
      expect(collisions).toEqual([])
      const texts = marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []))
      const foot = texts.filter(({ at }) => at.y > 755)
      expect(flat(foot.map(({ text }) => text).join(' '))).toBe(
        `Lark Hollow, 2026-03-02 page ${index + 1} of ${sheets.length}`,
      )
      const body = texts.filter(({ at }) => at.y <= 755)
      for (const { at, widthPt, sizePt } of body) {
        expect(at.x).toBeGreaterThanOrEqual(48)
        expect(at.x + widthPt).toBeLessThanOrEqual(612 - 36 + 0.1)
        expect(at.y).toBeGreaterThan(40)
        expect(at.y).toBeLessThanOrEqual(792 - 40 + 1)
        expect(sizePt).toBeGreaterThanOrEqual(8)
      }
      // Lines follow each other at least a line apart, and one reads them from the top.
      for (const [at, text] of body.entries()) {
        const next = body[at + 1]
        if (next !== undefined) expect(next.at.y - text.at.y).toBeGreaterThan(0.95 * text.sizePt)
      }
      // A box to tick stands beside the first line of its task.
      for (const mark of marks) {
        if (mark.kind !== 'rectangle' || mark.width > 20) continue
        boxes += 1
        expect([mark.width, mark.height, mark.x]).toEqual([8, 8, 50])
        expect(body.some(({ at }) => at.x === 64 && at.y > mark.y + 2 && at.y < mark.y + 10)).toBe(true)
      }
      // A stop stands in a frame of the whole width.
      for (const { at, text } of body.filter((each) => each.text.startsWith('STOP: '))) {
        const frame = marks.find(
          (mark) => mark.kind === 'rectangle' && mark.x === 48 && mark.y < at.y && mark.y + mark.height > at.y,
        )
        expect([text, frame?.kind === 'rectangle' ? frame.width : 0]).toEqual([text, 612 - 48 - 36])
      }
      all += ` ${body.map(({ text }) => text).join(' ')}`
      // No title is left alone at the foot of a page.
      expect(body.at(-1)?.face === 'bold' && body.at(-1)?.sizePt === 11).toBe(false)
    }
    const { steps, mounts, first_week: weeks } = values
    const months = weeks.map(
      ({ month, expected_kwh: middle, p10_kwh: low, p90_kwh: high }) =>
        `month ${month}: ${middle.toFixed(0)} kWh (${low.toFixed(0)} to ${high.toFixed(0)} kWh)`,
    )
    const wanted = [
      'Work plan: Lark Hollow',
      'MISSING: the plan lacks the rails (invented)',
      'CAUTION: A fall kills (invented).',
      ...steps.flatMap((step, index) => [
        `${index + 1}. ${step.title}${step.kind === 'inspection' ? ' (inspection)' : ''}`,
        `State: ${STATES[step.state]}`,
        ...(step.tools.length === 0 ? [] : [`Tools: ${step.tools.join('; ')}`]),
        ...(step.quantities.length === 0 ? [] : [`Quantities: ${step.quantities.map(amount).join('; ')}`]),
        ...(step.cautions.length === 0 ? [] : [`Caution: ${step.cautions.join(', ').replaceAll('-', ' ')}`]),
        ...step.tasks.map(({ says, source }) => (source === '' ? says : `${says} (${source})`)),
        ...(step.stop === null ? [] : [`STOP: ${step.stop}`]),
      ]),
      'Mount positions',
      ...mounts.map(
        ({ mount, rafter, x_in: x, y_in: y }) =>
          `${mount}: rafter ${rafter}, ${onTape(x)} from the left end of the eave, ${onTape(y)} up the slope`,
      ),
      'First week by month: expected, and range of four cases in five',
      ...months,
    ]
    expect(flat(all).replaceAll(' ', '')).toBe(flat(wanted.join(' ')).replaceAll(' ', ''))
    expect(boxes).toBe(steps.reduce((sum, { tasks }) => sum + tasks.length, 0) + mounts.length)
  })

  test('Markdown has the same, and names cannot become markup', async () => {
    const { values } = await planOf(stringHouse(), 25)
    const markdown = planMarkdown('Lark [Hollow] *a_b* _c_', values, cautions, gaps)
    expect(
      markdown.startsWith(
        '# Lark \\[Hollow\\] \\*a_b\\* \\_c\\_\n\n## Missing\n\n- the plan lacks the rails (invented)\n\n## Caution\n\n- A fall kills (invented).\n\n## 1. Apply to the utility\n\nState: the house is live as ever;',
      ),
    ).toBe(true)
    const lines = markdown.split('\n')
    for (const [index, step] of values.steps.entries()) {
      const head = lines.indexOf(`## ${index + 1}. ${step.title}${step.kind === 'inspection' ? ' (inspection)' : ''}`)
      expect(head).toBeGreaterThan(0)
      const next = lines.findIndex((line, at) => at > head && line.startsWith('## '))
      const body = lines.slice(head + 1, next).filter((line) => line !== '')
      expect(body[0]).toBe(`State: ${STATES[step.state]}`)
      expect(body.filter((line) => line.startsWith('- [ ] '))).toHaveLength(step.tasks.length)
      expect(body.filter((line) => line.startsWith('Tools: '))).toHaveLength(step.tools.length > 0 ? 1 : 0)
      expect(body.filter((line) => line.startsWith('Quantities: '))).toHaveLength(step.quantities.length > 0 ? 1 : 0)
      expect(body.filter((line) => line.startsWith('Caution: '))).toHaveLength(step.cautions.length > 0 ? 1 : 0)
      expect(body.filter((line) => line.startsWith('**STOP: '))).toHaveLength(step.stop === null ? 0 : 1)
      for (const { says, source } of step.tasks)
        expect(body.join('\n').replaceAll('\\', '')).toContain(`- [ ] ${says}${source === '' ? '' : ` *(${source})*`}`)
    }
    const table = (heading: string): string[] => lines.slice(lines.indexOf(heading) + 2)
    const mounts = table('## Mount positions')
    expect(mounts[0]).toBe('| Mount | Plane | Rail | Rafter | From the left end of the eave | Up the slope | Done |')
    expect(mounts[1]).toBe('| --- | --- | --- | --- | --- | --- | --- |')
    for (const [index, { mount, plane, rail, rafter, x_in: x, y_in: y }] of values.mounts.entries())
      expect(mounts[2 + index]).toBe(`| ${[mount, plane, rail, rafter, onTape(x), onTape(y), '☐'].join(' | ')} |`)
    const weeks = table('## First week by month (80 % range)')
    expect(weeks[0]).toBe('| Month | Expected kWh | Low kWh | High kWh |')
    for (const [index, week] of values.first_week.entries())
      expect(weeks[2 + index]).toBe(
        `| ${[week.month, week.expected_kwh, week.p10_kwh, week.p90_kwh].map((each) => each.toFixed(0)).join(' | ')} |`,
      )
    const bare = planMarkdown('Lark', { ...values, mounts: [] }, [], [])
    for (const heading of ['## Missing', '## Caution\n', '## Mount positions']) expect(bare).not.toContain(heading)
  })
})

const STATES: Readonly<Record<string, string>> = {
  not_proved_dead: 'the house is live as ever; everything counts as live until the absence of voltage is proved',
  dead: 'dead: everything of the system off and locked out',
  open_strings_live: 'off and locked out; modules and open strings are live by light',
  closed_strings_off: 'off and locked out; the strings are closed and live up to the open DC switch',
  on_after_permission: 'on, only after the written permission of the utility',
}

const amount = ({ what, count, unit }: { what: string; count: number; unit: string }): string => {
  const number = Number.isInteger(count) ? `${count}` : count.toFixed(1)
  return unit === '' ? `${number} x ${what}` : `${number} ${unit} of ${what}`
}

/** A length to the nearest sixteenth, as a tape shows it. */
function onTape(lengthIn: number): string {
  const units = Math.round(lengthIn * 16)
  const feet = Math.floor(units / 192)
  const rest = (units - 192 * feet) / 16
  const whole = Math.floor(rest)
  const under = [1, 2, 4, 8, 16].find((by) => Number.isInteger((rest - whole) * by)) ?? 16
  const part = rest === whole ? '' : `${(rest - whole) * under}/${under}`
  const inches = part === '' ? `${whole}` : whole === 0 ? part : `${whole}-${part}`
  return feet === 0 ? `${inches} in` : `${feet} ft ${inches} in`
}

function raise(): never {
  throw new Error('not in the demo house')
}
