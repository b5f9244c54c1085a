import { crc32, deflateSync } from 'node:zlib'
import { describe, expect, test } from 'vitest'
import { FileError } from '../../../src/files/index.js'
import { readLogo } from '../../../src/papers/index.js'
import { loadSample, prepare } from '../proposal/offers.js'
import { readStructure } from '../../drawings/read-structure.js'

const svg = (inside: string, attributes = 'viewBox="0 0 40 20"'): Uint8Array =>
  Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inside}</svg>`)

function chunk(type: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(type), data])
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)]
  length.writeUInt32BE(data.length)
  sum.writeUInt32BE(crc32(body))
  return Buffer.concat([length, body, sum])
}

/** The rows of a picture of three values of 8 bits a pixel, each behind the number of its filter. */
const rowsOf = (width: number, height: number, filter = 0): Buffer =>
  Buffer.concat(Array.from({ length: height }, () => Buffer.concat([Buffer.of(filter), Buffer.alloc(3 * width, 90)])))

/** @param more Further chunks, before the pixels. @param colour Bits of a value and type of colour. */
function png(
  width: number,
  height: number,
  packed: Buffer = deflateSync(rowsOf(width, height)),
  more: Buffer = Buffer.alloc(0),
  colour = [8, 2],
): Buffer {
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head.set([...colour, 0, 0, 0], 8)
  const mark = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  return Buffer.concat([mark, chunk('IHDR', head), more, chunk('IDAT', packed), chunk('IEND', Buffer.alloc(0))])
}

/** The length of its pixels says more than there are. */
function longPart(bytes: Buffer): Buffer {
  const copy = Buffer.from(bytes)
  copy.writeUInt32BE(0xff_ff_ff_00, 33)
  return copy
}

/** With one byte of its head changed. */
function withHead(bytes: Buffer, at: number, value: number): Buffer {
  const copy = Buffer.from(bytes)
  copy[at] = value
  return copy
}

const SHAPES =
  '<title>Sign (invented)</title><g fill="#0a6" transform="translate(2 1) rotate(10)"><rect width="10" height="5"/><circle cx="20" cy="8" r="4" style="fill:rgb(10, 20, 30);stroke:black;stroke-width:2px"/></g><path d="M1,2c3 4 5 6 7 8z" fill="none" stroke="red"/><polygon points="0,0 4,0 4,4"/>'

describe('a sign of the user', () => {
  test('SVG of shapes is rebuilt, and stands in the PDF as no content and in the page as data', async () => {
    const logo = await readLogo('sign.svg', svg(SHAPES))
    expect([logo.widthPt, logo.heightPt]).toEqual([120, 60])
    const rebuilt = Buffer.from(logo.dataUri.split(',')[1] ?? '', 'base64').toString()
    expect(rebuilt).toContain('<path d="M0 0H10V5H0Z" fill="#00aa66" transform="matrix(1 0 0 1 2 1) matrix(')
    expect(rebuilt).toContain('fill="#0a141e" stroke="#000000" stroke-width="2"')
    expect(rebuilt).toContain('d="M 1 2 c 3 4 5 6 7 8 z" fill="none" stroke="#ff0000"')
    expect(rebuilt).not.toContain('title')
    const offer = await prepare(loadSample('lark-hollow'), { logo })
    const { pages, strays } = await readStructure(await offer.pdf())
    expect([strays, pages.flatMap(({ loose }) => loose)]).toEqual([[], []])
    expect(await offer.html()).toContain(`<img class="logo" alt="" src="data:image/svg+xml;base64,`)
  })

  test('PNG is taken as it is, without the texts that it carries', async () => {
    const texts = Buffer.concat([chunk('tEXt', Buffer.from('Author\0Somebody')), chunk('tEXt', Buffer.alloc(300_000))])
    const logo = await readLogo('sign.png', png(60, 20, undefined, texts))
    expect(Buffer.from(logo.dataUri.split(',')[1] ?? '', 'base64').equals(png(60, 20))).toBe(true)
    expect([logo.widthPt, logo.heightPt]).toEqual([150, 50])
    const pdf = await (await prepare(loadSample('lark-hollow'), { logo })).pdf()
    expect(Buffer.from(pdf).toString('latin1')).toContain('/Subtype /Image')
  })

  test.each([
    ['a script', svg('<script>alert(1)</script><rect width="1" height="1"/>'), '<script> is not taken'],
    ['a foreign object', svg('<foreignObject><p>x</p></foreignObject>'), '<foreignObject> is not taken'],
    ['a handler', svg('<rect width="1" height="1" onload="x()"/>'), 'an event handler (onload)'],
    [
      'a handler of the whole',
      svg('<rect width="1" height="1"/>', 'viewBox="0 0 1 1" onload="x()"'),
      'an event handler',
    ],
    ['an image', svg('<image href="http://x.invalid/a.png"/>'), 'refers to something (href)'],
    [
      'a use of another file',
      svg('<use xlink:href="a.svg#b"/>', 'xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 1 1"'),
      'refers to something (href)',
    ],
    ['a picture as colour', svg('<rect width="1" height="1" fill="url(http://x.invalid)"/>'), 'refers to something'],
    ['a picture in a style', svg('<rect width="1" height="1" style="fill:url(#a)"/>'), 'refers to something'],
    ['a style sheet', svg('<style>@import "x"</style>'), '<style> is not taken'],
    ['a text', svg('<text>Sign</text>'), 'turn texts into paths'],
    ['an animation', svg('<rect width="1" height="1"><animate/></rect><set/>'), '<set> is not taken'],
    ['entities', Buffer.from('<!DOCTYPE svg [<!ENTITY a "b">]><svg viewBox="0 0 1 1"><g/></svg>'), 'a DOCTYPE'],
    ['no shapes', svg('<g/>'), 'it has no shapes'],
    ['no size', svg('<rect width="1" height="1"/>', ''), 'no viewBox'],
    ['a path that ends too early', svg('<path d="M1 2 L3"/>'), 'places that cannot be read'],
    ['a colour that is no colour', svg('<rect width="1" height="1" fill="mauve-ish"/>'), 'write colours as #rrggbb'],
    ['no XML', Buffer.from('<svg viewBox="0 0 1 1"><g></svg>'), 'not well-formed'],
    ['another file', Buffer.from('GIF89a'), 'neither PNG nor SVG'],
    ['bytes', Buffer.from([0xff, 0xfe, 0x00]), 'cannot be read as SVG'],
    ['a PNG that is cut', png(4, 4).subarray(0, 60), 'the PNG ends too early'],
    ['a PNG whose pixels are no packed data', png(4, 4, Buffer.alloc(40, 7)), 'the PNG is damaged'],
    ['a PNG with too few pixels', png(4, 4, deflateSync(rowsOf(4, 3))), 'the PNG is damaged'],
    ['a PNG with too many of them', png(4, 4, deflateSync(rowsOf(4, 400))), 'the PNG is damaged'],
    ['a PNG with a filter that there is none of', png(4, 4, deflateSync(rowsOf(4, 4, 5))), 'the PNG is damaged'],
    ['a PNG without its palette', png(13, 4, undefined, undefined, [8, 3]), 'the PNG is damaged'],
    ['a PNG of no type of colour', png(4, 4, undefined, undefined, [8, 5]), 'the PNG is damaged'],
    ['a PNG whose part is longer than the file', longPart(png(4, 4)), 'the PNG is damaged'],
    [
      'a PNG of too many pixels',
      Buffer.concat([png(4, 4).subarray(0, 16), Buffer.from([0, 1, 0, 0, 0, 1, 0, 0]), png(4, 4).subarray(24)]),
      'too many',
    ],
    ['a PNG with two heads', png(4, 4, undefined, chunk('IHDR', Buffer.alloc(13, 1))), 'the PNG is damaged'],
    ['a PNG that is packed in another way', withHead(png(4, 4), 26, 1), 'the PNG is damaged'],
    ['a PNG that is filtered in another way', withHead(png(4, 4), 27, 1), 'the PNG is damaged'],
    ['an interlaced PNG', withHead(png(4, 4), 28, 1), 'interlaced'],
    ['a PNG without width', withHead(png(4, 4), 19, 0), 'the PNG has no size'],
    ['a PNG without height', withHead(png(4, 4), 23, 0), 'the PNG has no size'],
    [
      'a PNG whose palette is cut',
      png(12, 4, deflateSync(Buffer.alloc(13 * 4)), chunk('PLTE', Buffer.alloc(4)), [8, 3]),
      'the PNG is damaged',
    ],
    ['a handler in capitals', svg('<rect width="1" height="1" ONLOAD="x()"/>'), 'an event handler (ONLOAD)'],
    ['a handler of a group', svg('<g onclick="x()"><rect width="1" height="1"/></g>'), 'an event handler (onclick)'],
    ['a script as an address', svg('<rect width="1" height="1" fill="JavaScript:x()"/>'), 'refers to something'],
    ['an entity', Buffer.from('<!ENTITY a "b"><svg viewBox="0 0 1 1"><g/></svg>'), 'a DOCTYPE'],
    [
      'a shape that is moved too often',
      svg(`<rect width="1" height="1" transform="${'scale(1)'.repeat(201)}"/>`),
      'more than 200 transforms',
    ],
    ['too many shapes', svg('<rect width="1" height="1"/>'.repeat(4001)), 'more than 4000 shapes'],
    ['deep groups', svg(`${'<g>'.repeat(60)}<rect width="1" height="1"/>${'</g>'.repeat(60)}`), 'too deep'],
  ])('%s is refused with the reason', async (_, bytes, reason) => {
    const error: unknown = await readLogo('sign', bytes).then(
      () => undefined,
      (thrown: unknown) => thrown,
    )
    expect(error).toBeInstanceOf(FileError)
    expect((error as FileError).message).toMatch(/^logo 'sign': /u)
    expect((error as FileError).message).toContain(reason)
    expect((error as FileError).exitCode).toBe(2)
  })
})
