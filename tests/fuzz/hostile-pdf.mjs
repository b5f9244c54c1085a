/** PDF files that cost far more than their size, made anew for each test. No bytes of anybody's file are in them. */
import { deflateSync } from 'node:zlib'

const bytes = (text) => Buffer.from(text, 'latin1')
const MB = 1_000_000

/** A PDF of objects as they are written; object 1 is the catalog, 2 the pages, 3 a page. */
export function pdfOf(objects, trailer = '') {
  const parts = [bytes('%PDF-1.7\n')]
  const offsets = new Map()
  let length = parts[0].length
  const add = (part) => {
    parts.push(part)
    length += part.length
  }
  for (const [number, body] of Object.entries({ ...PAGE, ...objects })) {
    offsets.set(Number(number), length)
    add(bytes(`${number} 0 obj\n`))
    add(typeof body === 'string' ? bytes(body) : body)
    add(bytes('\nendobj\n'))
  }
  const size = Math.max(...offsets.keys()) + 1
  const start = length
  const rows = Array.from({ length: size }, (_, number) => {
    const offset = offsets.get(number)
    return offset === undefined ? '0000000000 65535 f \n' : `${String(offset).padStart(10, '0')} 00000 n \n`
  })
  add(bytes(`xref\n0 ${size}\n${rows.join('')}trailer\n<< /Size ${size} /Root 1 0 R ${trailer} >>\n`))
  add(bytes(`startxref\n${start}\n%%EOF\n`))
  return Buffer.concat(parts)
}

const PAGE = {
  1: '<< /Type /Catalog /Pages 2 0 R /AcroForm 4 0 R >>',
  2: '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
  3: '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 300 400] /Resources << >> /Annots [5 0 R] >>',
  4: '<< /Fields [5 0 R] /DA (/Helv 10 Tf 0 g) >>',
  5: '<< /Type /Annot /Subtype /Widget /FT /Tx /T (name) /F 4 /Rect [10 10 100 30] >>',
}

export function streamOf(content, entries = '') {
  return Buffer.concat([bytes(`<< ${entries} /Length ${content.length} >>\nstream\n`), content, bytes('\nendstream')])
}

const packed = (content) => deflateSync(content, { level: 9 })
const objectStream = (content, filter = '/FlateDecode', entries = '') =>
  streamOf(content, `/Type /ObjStm /N 1 /First 4 /Filter ${filter} ${entries}`)

/** Zeros packed as often as stated: twice makes a million times. */
function bomb(unpacked, times = 1) {
  let content = Buffer.concat([Buffer.from('9 0 null'), Buffer.alloc(unpacked, ' ')])
  for (let left = times; left > 0; left--) content = packed(content)
  return content
}

/** Each by its name; `size` is how large it gets, 1 for the full one. */
export const BOMBS = {
  'an object stream that unpacks to a gigabyte': (size = 1) => pdfOf({ 9: objectStream(bomb(1000 * MB * size)) }),
  'an object stream packed twice': (size = 1) =>
    pdfOf({ 9: objectStream(bomb(1000 * MB * size, 2), '[/FlateDecode /FlateDecode]') }),
  'many object streams of 60 MB': (size = 1) => {
    const one = objectStream(bomb(60 * MB))
    return pdfOf(Object.fromEntries(Array.from({ length: Math.ceil(20 * size) }, (_, at) => [9 + at, one])))
  },
  'an object stream of empty maps': (size = 1) =>
    pdfOf({ 9: objectStream(packed(Buffer.from(`9 0 [${'<<>>'.repeat(10 * MB * size)}]`))) }),
  'a list of 1.2 MB of maps': (size = 1) => pdfOf({ 9: `[${'<<>>'.repeat(0.3 * MB * size)}]` }),
  'lists in lists': (size = 1) => pdfOf({ 9: '['.repeat(1.2 * MB * size) }),
  'lists in lists in an object stream': (size = 1) =>
    pdfOf({ 9: objectStream(packed(Buffer.from(`9 0 ${'['.repeat(40 * MB * size)}`))) }),
  'a content that unpacks to a gigabyte': (size = 1) =>
    pdfOf({
      3: '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 300 400] /Resources << >> /Contents 9 0 R >>',
      9: streamOf(bomb(1000 * MB * size), '/Filter /FlateDecode'),
    }),
  'run lengths over a bomb': (size = 1) =>
    pdfOf({ 9: objectStream(packed(Buffer.alloc(20 * MB * size, 129)), '[/FlateDecode /RunLengthDecode]') }),
  'columns of a thousand million': () =>
    pdfOf({
      9: objectStream(bomb(MB), '/FlateDecode', '/DecodeParms << /Predictor 15 /Columns 1000000000 /Colors 32 >>'),
    }),
  'pages in pages': (size = 1) => {
    const count = Math.ceil(8000 * size)
    return pdfOf({
      2: `<< /Type /Pages /Kids [10 0 R] /Count 1 >>`,
      ...Object.fromEntries(
        Array.from({ length: count }, (_, at) => [
          10 + at,
          `<< /Type /Pages /Kids [${at === count - 1 ? '3 0 R' : `${11 + at} 0 R`}] /Count 1 >>`,
        ]),
      ),
    })
  },
  'pages that lead back': () => pdfOf({ 2: '<< /Type /Pages /Kids [2 0 R 2 0 R 2 0 R] /Count 3 >>' }),
  'one page a hundred thousand times': (size = 1) =>
    pdfOf({ 2: `<< /Type /Pages /Kids [${'3 0 R '.repeat(100_000 * size)}] /Count 1 >>` }),
  'a table of objects that leads back': () =>
    Buffer.concat([pdfOf({}).subarray(0, -30), bytes('trailer << /Root 1 0 R /Prev 9 >>\nstartxref\n9\n%%EOF\n')]),
  'a reference to itself': () => pdfOf({ 5: '5 0 R', 9: '<< /Length 9 0 R >>' }),
  'a length that is a loop': () =>
    pdfOf({ 9: '<< /Length 10 0 R >>\nstream\nx\nendstream', 10: '11 0 R', 11: '10 0 R' }),
  'an object number of a thousand million': () =>
    Buffer.concat([pdfOf({}), bytes('4000000000 0 obj\n<< >>\nendobj\n%%EOF\n')]),
  'fields in fields': (size = 1) => {
    const count = Math.ceil(8000 * size)
    return pdfOf(
      Object.fromEntries(
        Array.from({ length: count }, (_, at) => [
          at === 0 ? 5 : 10 + at,
          `<< /T (a) /Kids [${at === count - 1 ? '' : `${11 + at} 0 R`}] >>`,
        ]),
      ),
    )
  },
  'a name of 1.2 MB': (size = 1) => pdfOf({ 5: `<< /FT /Tx /T (${'n'.repeat(1.2 * MB * size)}) /Rect [1 1 9 9] >>` }),
  'brackets in a text': (size = 1) => pdfOf({ 9: '('.repeat(1.2 * MB * size) }),
  'a stream without an end': (size = 1) =>
    pdfOf({ 9: `<< /Length 5 >>\nstream\n${'endstrea '.repeat(130_000 * size)}` }),
  'a comment without an end': (size = 1) => pdfOf({ 9: `%${'%'.repeat(1.2 * MB * size)}` }),
  'numbers without an end': (size = 1) => pdfOf({ 9: `[${'9'.repeat(1.2 * MB * size)}]` }),
}

/** Words of PDF that are put in the place of others. */
const WORDS = [
  'null',
  '[]',
  '<< >>',
  '(x)',
  '/X',
  '2 0 R',
  '99 0 R',
  '3 0 R',
  '-1',
  '1e99',
  'true',
  '<FEFFD800>',
  '4294967295',
]

/** A file with one to four damages drawn by its seed: turned bits, cuts, parts left out or twice, values of another kind, a bomb. */
export function damaged(seed, sound) {
  let state = (Math.imul(seed, 2654435761) >>> 0) + 1
  const below = (count) => {
    state = (Math.imul(state ^ (state >>> 15), 2246822519) + 3266489917) >>> 0
    return Math.floor((state / 2 ** 32) * count)
  }
  let text = Buffer.from(sound).toString('latin1')
  for (let left = 1 + below(4); left > 0; left--) {
    const at = below(text.length)
    const kind = below(20)
    if (kind < 5)
      text = text.slice(0, at) + String.fromCharCode(text.charCodeAt(at) ^ (1 << below(8))) + text.slice(at + 1)
    else if (kind < 7) text = text.slice(0, at)
    else if (kind < 10) text = text.slice(0, at) + text.slice(at + 1 + below(60))
    else if (kind < 12)
      text = text.slice(0, at) + text.slice(at, at + below(300)).repeat(1 + below(20)) + text.slice(at)
    else if (kind < 19) {
      const values = [...text.matchAll(/(?<=\/[A-Za-z]+ )(?:\d+ 0 R|\([^)]*\)|\[[^\]]*\]|\/\w+|-?\d+)/gu)]
      const value = values[below(values.length)]
      if (value !== undefined)
        text = text.slice(0, value.index) + WORDS[below(WORDS.length)] + text.slice(value.index + value[0].length)
    } else {
      const names = Object.keys(BOMBS)
      text += BOMBS[names[below(names.length)]](0.01).toString('latin1')
    }
  }
  return Buffer.from(text, 'latin1')
}
