/** Files of each kind that cost most for their size, made anew at the largest size that is read. No bytes of anybody's file are in them. */
import { openSync, writeFileSync, writeSync, closeSync } from 'node:fs'
import { join } from 'node:path'

const MB = 1_000_000

/** Writes `head`, then `row` again and again up to so many bytes, then `tail`. `row` may be a function of its number. */
export function fill(path, bytes, head, row, tail = '', most = Infinity) {
  const file = openSync(path, 'w')
  writeSync(file, head)
  let left = bytes - Buffer.byteLength(head) - Buffer.byteLength(tail)
  let at = 0
  while (left > 0 && at < most) {
    const parts = []
    let length = 0
    while (length < 1_000_000 && length < left && at < most) {
      const part = typeof row === 'function' ? row(at) : row
      at += 1
      length += Buffer.byteLength(part)
      if (length > left) break
      parts.push(part)
    }
    if (parts.length === 0) break
    const text = parts.join('')
    writeSync(file, text)
    left -= Buffer.byteLength(text)
    if (length > left && parts.length < 2) break
  }
  writeSync(file, tail)
  closeSync(file)
}

const HOUSE = 'lark-hollow.yaml'
const stampOf = (minutes) =>
  new Date(Date.UTC(2010, 0, 1) + minutes * 60_000).toISOString().slice(0, 16).replace('T', ' ')
const setOf = (...args) => ['--allow-outside', ...args.flatMap((arg) => ['--set', arg])]

/** What doors need beside the examples. */
export function writeCompanions(folder) {
  const columns =
    'format: gablewatt-equipment-columns/1\nkind: module\nid_column: id\ncolumns:\n  pmax_w: { column: p }\n'
  writeFileSync(join(folder, 'columns.yaml'), columns)
}

/** How each kind of file is given to the program; `FILE` stands for the file. @type {Readonly<Record<string, readonly string[]>>} */
export const DOORS = {
  project: ['check-project', 'FILE'],
  weatherEpw: ['estimate-yield', HOUSE, ...setOf('site.climate={epw: FILE}')],
  weatherTypical: ['estimate-yield', HOUSE, ...setOf('site.climate={file: FILE, kind: tmy3_csv}')],
  weatherDatabase: ['estimate-yield', HOUSE, ...setOf('site.climate={file: FILE, kind: us_solar_database_csv}')],
  weatherStation: [
    'estimate-yield',
    HOUSE,
    ...setOf(
      'site.climate={file: FILE, kind: station_csv, table: { header_line: 1, stamp_columns: [t], stamp_format: iso, stamps_mark: beginning, clock: standard, utc_offset_h: -6, columns: { global: { column: G, unit: w_m2 }, air_temperature: { column: T, unit: c } } }}',
    ),
  ],
  meterXml: ['payback', HOUSE, ...setOf('usage={green_button: FILE, year: 2026, daylight_saving: true}')],
  meterCsv: [
    'payback',
    HOUSE,
    ...setOf(
      'usage={interval_csv: {file: FILE, header_line: 1, stamp_columns: [t], stamp_format: iso, stamps_mark: beginning, clock: standard, interval_min: 5, use_column: k, unit: kwh}, year: 2026, daylight_saving: true}',
    ),
  ],
  production: ['review-output', HOUSE, 'FILE'],
  bills: ['check-bill', HOUSE, 'FILE'],
  sheets: [
    'add-equipment',
    '--file',
    'new-equipment.yaml',
    '--table',
    'FILE',
    '--columns',
    'columns.yaml',
    '--dry-run',
  ],
  serials: ['write-handover', HOUSE, '--serials', 'FILE'],
  readings: ['write-handover', HOUSE, '--readings', 'FILE'],
  prices: ['price-bom', HOUSE, '--compare', 'FILE'],
  fleetTable: [
    'run-fleet',
    'fleet/template.yaml',
    '--table',
    'FILE',
    '--jobs',
    '1',
    '--stages',
    'yield',
    '--shard',
    '1/100000',
  ],
  fleetTableBad: [
    'run-fleet',
    'fleet/template.yaml',
    '--table',
    'FILE',
    '--jobs',
    '1',
    '--stages',
    'yield',
    '--shard',
    '1/100000',
  ],
  watchTable: ['watch-fleet', 'FILE', '--production', '.'],
  merge: ['run-fleet', '--merge', 'FILE'],
  journal: ['run-fleet', HOUSE, '--jobs', '1', '--stages', 'yield', '--journal', 'FILE', '--resume'],
  baseline: ['run-fleet', HOUSE, '--jobs', '1', '--stages', 'yield', '--baseline', 'FILE'],
  earlier: ['price-bom', HOUSE, '--use', 'FILE'],
  since: ['draw-permit', HOUSE, '--draft', '--since', 'FILE', '--out', 'never.pdf'],
  rates: ['import-rate', 'FILE'],
  verify: ['verify-file', 'FILE'],
  logo: ['write-proposal', HOUSE, '--logo', 'FILE', '--out', 'never.pdf'],
  form: ['fill-form', '--list', 'FILE'],
  documents: [
    'draw-permit',
    HOUSE,
    '--draft',
    ...setOf("documents=[{ id: rafter_letter, file: FILE, title: Letter, date: '2026-02-20' }]"),
    '--out',
    'never.pdf',
  ],
}

const J = 'gablewatt-'
/** Kind, name, what writes it, and the ending that its name must have. @type {[kind: string, name: string, make: (path: string) => void, ending?: string][]} */
export const HOSTILE = [
  ['weatherEpw', 'one line', (p) => fill(p, 20 * MB, 'LOCATION,', 'x,')],
  [
    'weatherEpw',
    'empty lines',
    (p) => fill(p, 20 * MB, 'LOCATION,a,b,c,d,e,37,-93,-6,300\nDATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n', '\n', 'x'),
  ],
  [
    'weatherEpw',
    'a row of fields',
    (p) => fill(p, 20 * MB, 'LOCATION,a,b,c,d,e,37,-93,-6,300\nDATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n', '1,'),
  ],
  [
    'weatherTypical',
    'tiny rows',
    (p) =>
      fill(
        p,
        20 * MB,
        '1,a,b,-6,37,-93,300\nDate (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),DNI (W/m^2),DHI (W/m^2),Dry-bulb (C)\n',
        '01/01/2000,01:00,0,0,0,1\n',
      ),
  ],
  [
    'weatherTypical',
    'bad rows',
    (p) =>
      fill(
        p,
        20 * MB,
        '1,a,b,-6,37,-93,300\nDate (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),DNI (W/m^2),DHI (W/m^2),Dry-bulb (C)\n',
        '1\n',
      ),
  ],
  ['weatherStation', 'tiny rows', (p) => fill(p, 20 * MB, 't,G,T\n', (i) => `${stampOf(i)},1,1\n`)],
  ['weatherStation', 'bad rows', (p) => fill(p, 20 * MB, 't,G,T\n', '1\n')],
  ['weatherStation', 'quoted rows', (p) => fill(p, 20 * MB, 't,G,T\n', '"1","",""\n')],
  ['weatherStation', 'many columns', (p) => fill(p, 20 * MB, `t,G,T${',x'.repeat(1997)}\n`, `${','.repeat(1999)}1\n`)],
  ['meterXml', 'tiny elements', (p) => fill(p, 60 * MB, '<feed>', '<a/>', '</feed>')],
  [
    'meterXml',
    'elements of names of their own',
    (p) => fill(p, 60 * MB, '<feed>', (i) => `<a${i.toString(36)}/>`, '</feed>'),
  ],
  ['meterXml', 'attributes', (p) => fill(p, 60 * MB, '<feed ', (i) => `a${i.toString(36)}="" `, '></feed>')],
  ['meterXml', 'most elements', (p) => fill(p, 60 * MB, '<feed>', '<a/>', '</feed>', 1_199_000)],
  [
    'meterXml',
    'most elements of names of their own',
    (p) => fill(p, 60 * MB, '<feed>', (i) => `<a${i.toString(36)}>x</a${i.toString(36)}>`, '</feed>', 1_199_000),
  ],
  [
    'meterXml',
    'most attributes',
    (p) => fill(p, 60 * MB, '<feed>', (i) => `<a b${i}="" c${i}=""/>`, '</feed>', 49_000),
  ],
  [
    'meterXml',
    'most readings',
    (p) =>
      fill(
        p,
        60 * MB,
        '<feed><entry><content><IntervalBlock>',
        '<IntervalReading><value>1</value></IntervalReading>',
        '</IntervalBlock></content></entry></feed>',
        599_000,
      ),
  ],
  ['meterXml', 'deep', (p) => fill(p, 60 * MB, '', '<a>')],
  ['meterXml', 'entities', (p) => fill(p, 60 * MB, '<feed>', '&amp;', '</feed>')],
  [
    'meterXml',
    'readings',
    (p) =>
      fill(
        p,
        60 * MB,
        '<feed><entry><content><IntervalBlock>',
        '<IntervalReading/>',
        '</IntervalBlock></content></entry></feed>',
      ),
  ],
  ['meterXml', 'entries', (p) => fill(p, 60 * MB, '<feed>', '<entry/>', '</feed>')],
  ['meterXml', 'links', (p) => fill(p, 60 * MB, '<feed><entry>', '<link rel="self" href="/a"/>', '</entry></feed>')],
  ['meterXml', 'an open mark', (p) => fill(p, 60 * MB, '<feed>', '<', '</feed>')],
  ['meterXml', 'a comment without an end', (p) => fill(p, 60 * MB, '<feed><!--', '- -', '</feed>')],
  [
    'meterXml',
    'a type of document',
    (p) => fill(p, 60 * MB, '<!DOCTYPE a [', (i) => `<!ENTITY a${i.toString(36)} "b">`, ']><feed/>'),
  ],
  ['meterXml', 'closing marks', (p) => fill(p, 60 * MB, '<feed>', '</a>', '</feed>')],
  ['meterXml', 'texts between', (p) => fill(p, 60 * MB, '<feed>', 'x<a/>', '</feed>')],
  ['meterCsv', 'tiny rows', (p) => fill(p, 60 * MB, 't,k\n', (i) => `${stampOf(5 * i)},1\n`)],
  ['meterCsv', 'most rows', (p) => fill(p, 60 * MB, 't,k\n', (i) => `${stampOf(5 * i)},1\n`, '', 2_000_000)],
  [
    'meterCsv',
    'most rows in quotes',
    (p) => fill(p, 60 * MB, 't,k\n', (i) => `"${stampOf(5 * i)}","1"\n`, '', 2_000_000),
  ],
  ['meterCsv', 'empty cells', (p) => fill(p, 60 * MB, 't,k\n', ',\n')],
  ['meterCsv', 'bad rows', (p) => fill(p, 60 * MB, 't,k\n', '1\n')],
  ['meterCsv', 'quoted rows', (p) => fill(p, 60 * MB, 't,k\n', '"",""\n')],
  ['meterCsv', 'same stamps', (p) => fill(p, 60 * MB, 't,k\n', '2026-01-01 00:00,1\n')],
  ['production', 'tiny rows', (p) => fill(p, 60 * MB, 't,kWh\n', (i) => `${stampOf(5 * i)},1\n`)],
  ['production', 'most rows', (p) => fill(p, 60 * MB, 't,kWh\n', (i) => `${stampOf(5 * i)},1\n`, '', 2_000_000)],
  [
    'production',
    'most rows in quotes',
    (p) => fill(p, 60 * MB, 't,kWh\n', (i) => `"${stampOf(5 * i)}","1"\n`, '', 2_000_000),
  ],
  ['production', 'most bad numbers', (p) => fill(p, 60 * MB, 't,kWh\n', (i) => `${stampOf(5 * i)},x\n`, '', 2_000_000)],
  ['production', 'empty cells', (p) => fill(p, 60 * MB, 't,kWh\n', ',\n')],
  ['production', 'bad rows', (p) => fill(p, 60 * MB, 't,kWh\n', '1\n')],
  ['production', 'bad stamps', (p) => fill(p, 60 * MB, 't,kWh\n', 'x,1\n')],
  ['production', 'bad numbers', (p) => fill(p, 60 * MB, 't,kWh\n', (i) => `${stampOf(5 * i)},x\n`)],
  ['production', 'quoted rows', (p) => fill(p, 60 * MB, 't,kWh\n', '"",""\n')],
  ['production', 'same stamps', (p) => fill(p, 60 * MB, 't,kWh\n', '2026-01-01 00:00,1\n')],
  [
    'production',
    'odd stamps',
    (p) => fill(p, 60 * MB, 't,kWh\n', (i) => `${stampOf(7 * ((i * 7919) % 1_000_003))},${i}\n`),
  ],
  ['production', 'a quote without an end', (p) => fill(p, 60 * MB, 't,kWh\n"', 'x,\n')],
  ['production', 'empty lines', (p) => fill(p, 60 * MB, '', '\n', 't,kWh\n')],
  ['production', 'lines without a header', (p) => fill(p, 60 * MB, '', 'x\n')],
  ['production', 'empty lines below', (p) => fill(p, 60 * MB, 't,kWh\n', '\n')],
  ['meterCsv', 'empty lines below', (p) => fill(p, 60 * MB, 't,k\n', '\n')],
  ['production', 'many columns', (p) => fill(p, 60 * MB, `t,kWh${',x'.repeat(1997)}\n`, `${','.repeat(1998)}\n`)],
  ['production', 'wide header', (p) => fill(p, 60 * MB, `t${',kWh'.repeat(30000)}\n`, '1,2\n')],
  ['production', 'doubled quotes', (p) => fill(p, 60 * MB, 't,kWh\n', `"${'""'.repeat(49_000)}",1\n`)],
  ['bills', 'tiny rows', (p) => fill(p, 5 * MB, 'from,to,kwh,amount\n', '2025-01-01,2025-01-31,1,1\n')],
  ['bills', 'most rows', (p) => fill(p, 5 * MB, 'from,to,kwh,amount\n', '2025-01-01,2025-01-31,1,1\n', '', 20_000)],
  [
    'bills',
    'rows in order',
    (p) =>
      fill(
        p,
        5 * MB,
        'from,to,kwh,amount\n',
        (i) => `${stampOf(1440 * 30 * i).slice(0, 10)},${stampOf(1440 * (30 * i + 29)).slice(0, 10)},1,1\n`,
        '',
        20_000,
      ),
  ],
  [
    'bills',
    'most bills in order',
    (p) =>
      fill(
        p,
        5 * MB,
        'from,to,kwh,amount\n',
        (i) =>
          `${stampOf(1440 * 30 * i).slice(0, 10)},${stampOf(1440 * (30 * i + 29)).slice(0, 10)},${100 + (i % 900)},${20 + (i % 77)}.17\n`,
        '',
        600,
      ),
  ],
  ['bills', 'bad rows', (p) => fill(p, 5 * MB, 'from,to,kwh,amount\n', '1\n')],
  ['sheets', 'tiny rows', (p) => fill(p, 20 * MB, 'id,p\n', 'a,1\n')],
  ['sheets', 'most rows', (p) => fill(p, 20 * MB, 'id,p\n', (i) => `a${i},400\n`, '', 20_000)],
  ['sheets', 'bad rows', (p) => fill(p, 20 * MB, 'id,p\n', '1\n')],
  ['serials', 'tiny rows', (p) => fill(p, 5 * MB, 'kind,unit,serial\n', 'module,1,1\n')],
  ['serials', 'most rows', (p) => fill(p, 5 * MB, 'kind,unit,serial\n', (i) => `module,${i},${i}\n`, '', 20_000)],
  ['readings', 'tiny rows', (p) => fill(p, 5 * MB, 'string,voc_v\n', 'a,1\n')],
  ['prices', 'tiny rows', (p) => fill(p, 2 * MB, 'id,pack,usd\n', 'a,each,1\n'), '.csv'],
  ['fleetTable', 'tiny rows', (p) => fill(p, 200 * MB, 'id,title\n', (i) => `h${i},\n`)],
  ['fleetTable', 'most rows', (p) => fill(p, 200 * MB, 'id,title\n', (i) => `h${i},\n`, '', 500_000)],
  ['fleetTable', 'empty cells', (p) => fill(p, 200 * MB, 'id,title\n', ',\n')],
  ['fleetTable', 'bad rows', (p) => fill(p, 200 * MB, 'id,title\n', 'a\n')],
  ['fleetTable', 'one line', (p) => fill(p, 200 * MB, 'id,title\n', 'a,')],
  ['fleetTable', 'a quote without an end', (p) => fill(p, 200 * MB, 'id,title\n"', 'a,\n')],
  ['watchTable', 'tiny rows', (p) => fill(p, 60 * MB, 'id,project\n', (i) => `h${i},p\n`), '.csv'],
  ['merge', 'one line', (p) => fill(p, 200 * MB, '{', 'x')],
  ['merge', 'empty lines', (p) => fill(p, 200 * MB, '', '\n')],
  ['merge', 'tiny lines', (p) => fill(p, 200 * MB, '', '{}\n')],
  ['merge', 'most lines', (p) => fill(p, 200 * MB, '', '{}\n', '', 500_000)],
  [
    'merge',
    'lines of the largest length',
    (p) => fill(p, 200 * MB, '', `{"format":"${J}fleet/2","a":[${'{},'.repeat(320_000)}{}]}\n`),
  ],
  [
    'merge',
    'wide lines',
    (p) => fill(p, 200 * MB, '', `{"format":"${J}fleet/2","a":[${'[],'.repeat(20_000_000)}[]]}\n`),
  ],
  ['journal', 'one line', (p) => fill(p, 400 * MB, `{"format":"${J}fleet-journal/`, 'x')],
  ['journal', 'most lines', (p) => fill(p, 400 * MB, `{"format":"${J}fleet-journal/1"}\n`, '{}\n', '', 499_000)],
  ['journal', 'tiny lines', (p) => fill(p, 400 * MB, `{"format":"${J}fleet-journal/3"}\n`, '{}\n')],
  [
    'baseline',
    'empty maps',
    (p) => fill(p, 250 * MB, `{"format":"${J}fleet-baseline/3","seal":"","data":[`, '{},', '{}]}'),
  ],
  [
    'baseline',
    'most empty maps',
    (p) => fill(p, 250 * MB, `{"format":"${J}fleet-baseline/3","seal":"","data":[`, '{},', '{}]}', 4_990_000),
  ],
  [
    'baseline',
    'most numbers',
    (p) => fill(p, 250 * MB, `{"format":"${J}fleet-baseline/3","seal":"","data":[`, '1,', '1]}', 14_990_000),
  ],
  [
    'baseline',
    'most keys',
    (p) =>
      fill(
        p,
        250 * MB,
        `{"format":"${J}fleet-baseline/3","seal":"","projects":{"a":{`,
        (i) => `"${i.toString(36)}":1,`,
        '"a":1}}}',
        7_490_000,
      ),
  ],
  ['baseline', 'numbers', (p) => fill(p, 250 * MB, `{"format":"${J}fleet-baseline/3","seal":"","data":[`, '1,', '1]}')],
  [
    'baseline',
    'keys',
    (p) =>
      fill(
        p,
        250 * MB,
        `{"format":"${J}fleet-baseline/3","seal":"","projects":{"a":{`,
        (i) => `"${i.toString(36)}":{},`,
        '"a":{}}}}',
      ),
  ],
  ['earlier', 'empty maps', (p) => fill(p, 20 * MB, `{"format":"${J}result/1","seal":"","data":[`, '{},', '{}]}')],
  [
    'earlier',
    'most empty maps',
    (p) => fill(p, 20 * MB, `{"format":"${J}result/1","seal":"","data":[`, '{},', '{}]}', 660_000),
  ],
  [
    'earlier',
    'keys',
    (p) =>
      fill(p, 20 * MB, `{"format":"${J}result/1","seal":"","data":{`, (i) => `"${i.toString(36)}":{},`, '"a":{}}}'),
  ],
  ['since', 'empty maps', (p) => fill(p, 20 * MB, `{"format":"${J}packet/1","seal":"","data":[`, '{},', '{}]}')],
  ['rates', 'empty maps', (p) => fill(p, 60 * MB, '{"items":[', '{},', '{}]}')],
  [
    'rates',
    'keys',
    (p) =>
      fill(
        p,
        60 * MB,
        '{"items":[{',
        (i) => `"key of a rate, number ${i.toString(36)}":"${'x'.repeat(40)}",`,
        '"a":1}]}',
      ),
  ],
  ['rates', 'backslashes', (p) => fill(p, 60 * MB, '{"items":["', '\\u0000', '"]}')],
  ['rates', 'spaces', (p) => fill(p, 60 * MB, '[', ' ')],
  ['verify', 'empty maps', (p) => fill(p, 100 * MB, `{"format":"${J}result/1","seal":"","data":[`, '{},', '{}]}')],
  ['verify', 'tiny lines', (p) => fill(p, 100 * MB, `{"format":"${J}fleet/2","seal":""}\n`, '\n1')],
  ['verify', 'sealed lines', (p) => fill(p, 100 * MB, '', `{"format":"${J}fleet/2","seal":""}\n`)],
  ['verify', 'a PDF of marks', (p) => fill(p, 100 * MB, '%PDF-1.7\n', 'gablewatt /Gablewatt startxref %%EOF\n')],
  ['verify', 'zeros', (p) => fill(p, 100 * MB, '', '\0')],
  [
    'logo',
    'shapes',
    (p) => fill(p, MB, '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">', '<path d="M0 0L1 1"/>', '</svg>'),
    '.svg',
  ],
  [
    'logo',
    'one path',
    (p) => fill(p, MB, '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0', 'L1 1', '"/></svg>'),
    '.svg',
  ],
  [
    'logo',
    'arcs',
    (p) =>
      fill(
        p,
        MB,
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0',
        'A1 1 0 1 0 1 1',
        '"/></svg>',
      ),
    '.svg',
  ],
  [
    'logo',
    'transforms',
    (p) =>
      fill(
        p,
        MB,
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path transform="',
        'scale(1)',
        '" d="M0 0L1 1"/></svg>',
      ),
    '.svg',
  ],
  [
    'logo',
    'groups with transforms',
    (p) =>
      fill(
        p,
        MB,
        `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><g transform="${'scale(1)'.repeat(60_000)}">`,
        '<path d="M0 0L1 1"/>',
        '</g></svg>',
      ),
    '.svg',
  ],
  [
    'logo',
    'styles',
    (p) =>
      fill(
        p,
        MB,
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path style="',
        'fill:#fff;',
        '" d="M0 0L1 1"/></svg>',
      ),
    '.svg',
  ],
  [
    'logo',
    'points',
    (p) =>
      fill(
        p,
        MB,
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><polygon points="0 0',
        ' 1 1',
        '"/></svg>',
      ),
    '.svg',
  ],
  [
    'logo',
    'attributes',
    (p) => fill(p, MB, '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9" ', (i) => `a${i}="" `, '></svg>'),
    '.svg',
  ],
  [
    'logo',
    'digits',
    (p) => fill(p, MB, '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 ', '1', '"/></svg>'),
    '.svg',
  ],
]
