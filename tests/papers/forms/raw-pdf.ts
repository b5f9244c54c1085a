/** A PDF of objects as they are written here, by number; object 1 is its catalog. */
export function rawPdf(objects: Readonly<Record<number, string>>, trailer = ''): Uint8Array {
  const numbers = Object.keys(objects).map(Number)
  let text = '%PDF-1.7\n'
  const offsets = new Map<number, number>()
  for (const number of numbers) {
    offsets.set(number, text.length)
    text += `${number} 0 obj\n${objects[number]}\nendobj\n`
  }
  const size = Math.max(...numbers) + 1
  const rows = Array.from({ length: size }, (_, number) => {
    const offset = offsets.get(number)
    return offset === undefined ? '0000000000 65535 f \n' : `${String(offset).padStart(10, '0')} 00000 n \n`
  })
  const start = text.length
  text += `xref\n0 ${size}\n${rows.join('')}trailer\n<< /Size ${size} /Root 1 0 R ${trailer} >>\nstartxref\n${start}\n%%EOF\n`
  return new Uint8Array(Buffer.from(text, 'latin1'))
}

/** A stream object with these entries beside its length. */
export function stream(content: string, entries = ''): string {
  return `<< ${entries} /Length ${content.length} >>\nstream\n${content}\nendstream`
}

/** Number of the first object of the fields of `rawForm`. */
export const FIRST = 10

/** Looks of a button in two states, to be named in its AP. */
export const ON = '8 0 R'
export const OFF = '9 0 R'

/**
 * A form of one page.
 *
 * @param bodies Fields and widgets, numbered from 10.
 * @param roots Numbers of the objects in /Fields.
 * @param widgets Numbers of the objects in the page's /Annots; those with a /Rect when left out.
 */
export function rawForm(
  bodies: readonly string[],
  {
    roots = bodies.map((_, index) => FIRST + index),
    widgets = bodies.flatMap((body, index) => (body.includes('/Rect') ? [FIRST + index] : [])),
    form = '',
    catalog = '',
    trailer = '',
  }: {
    readonly roots?: readonly number[]
    readonly widgets?: readonly number[]
    readonly form?: string
    readonly catalog?: string
    readonly trailer?: string
  } = {},
): Uint8Array {
  const refs = (numbers: readonly number[]): string => numbers.map((number) => `${number} 0 R`).join(' ')
  const box = '/Type /XObject /Subtype /Form /BBox [0 0 10 10]'
  return rawPdf(
    {
      1: `<< /Type /Catalog /Pages 2 0 R /AcroForm 4 0 R ${catalog} >>`,
      2: '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
      3: `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 300 400] /Contents 6 0 R /Resources << >> /Annots [${refs(widgets)}] >>`,
      4: `<< /Fields [${refs(roots)}] /DA (/Helv 10 Tf 0 g) /DR << /Font << /Helv 5 0 R >> >> ${form} >>`,
      5: '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>',
      6: stream('0 0 m'),
      8: stream('0 0 10 10 re f', box),
      9: stream('0 0 10 10 re S', box),
      ...Object.fromEntries(bodies.map((body, index) => [FIRST + index, body])),
    },
    trailer,
  )
}
