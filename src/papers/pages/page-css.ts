import { COLORS, type Color } from '../../drawings/index.js'

/** Colours of figures on a dark ground; what is not named stays. */
const DARK: Readonly<Record<Color, string>> = {
  ...COLORS,
  black: '#f2f2ee',
  white: '#1a1d1c',
  grey: '#b5bdb9',
  light: '#2a302e',
  mid: '#4a524f',
  pine: '#8fd0c2',
  sage: '#4f8278',
  mist: '#24352f',
  clay: '#e8996f',
  sand: '#3a2c22',
}

const names = Object.keys(COLORS) as Color[]
const variables = (of: Readonly<Record<Color, string>>): string =>
  names.map((name) => `--${name}:${of[name]}`).join(';')

/** Figures are drawn in the colours of paper; the page exchanges them for those of its ground. */
const exchanged = names
  .map(
    (name) => `svg [fill="${COLORS[name]}"]{fill:var(--${name})}svg [stroke="${COLORS[name]}"]{stroke:var(--${name})}`,
  )
  .join('')

/** The style of a paper as a web page. */
export const PAGE_STYLE = `
:root{color-scheme:light dark;${variables(COLORS)}}
@media screen and (prefers-color-scheme:dark){:root{${variables(DARK)}}}
*{box-sizing:border-box}
body{margin:0;background:var(--white);color:var(--black);font:1rem/1.5 'DejaVu Sans',Verdana,system-ui,sans-serif}
main{max-width:46rem;margin:0 auto;padding:2rem 1.25rem 3rem;overflow-wrap:anywhere}
.logo{float:right;max-width:11rem;max-height:4.5rem;background:#fff}
h1{color:var(--pine);font-size:2rem;line-height:1.2;margin:0 0 .25rem}
h2{color:var(--pine);font-size:1.25rem;margin:2rem 0 .5rem}
h3{color:var(--pine);font-size:1.05rem;margin:1.25rem 0 .5rem}
p{margin:.5rem 0}
.below,figcaption,dt,.foot{color:var(--grey)}
figure{margin:1rem 0}
figcaption,details{font-size:.9rem}
svg{display:block;width:100%;height:auto}
dl{margin:.5rem 0}
dl div{display:grid;grid-template-columns:minmax(8rem,34%) 1fr;gap:.25rem 1rem;padding:.15rem 0}
dt,dd{margin:0}
table{width:100%;border-collapse:collapse;margin:.75rem 0;font-size:.95rem}
th,td{text-align:start;vertical-align:top;padding:.3rem .4rem;border-bottom:1px solid var(--mid)}
thead th{background:var(--mist);border-bottom:2px solid var(--pine)}
tbody th{font-weight:600}
.right{text-align:end;overflow-wrap:normal;font-variant-numeric:tabular-nums}
.total td,.total th{font-weight:700;background:var(--mist)}
.box{margin:1rem 0;padding:.35rem 1rem;background:var(--mist);border-inline-start:4px solid var(--pine)}
.stamp{color:var(--clay);font-weight:700;font-size:1.3rem;text-align:center}
.box.warning{background:var(--sand);border-color:var(--clay)}
.boxes{list-style:'☐ '}
summary{cursor:pointer;padding:.3rem 0;color:var(--pine)}
summary:focus-visible,.wide:focus-visible{outline:2px solid var(--pine)}
.blanks{display:flex;gap:1.5rem;margin-top:3rem}
.blanks p{flex:1;border-top:1px solid var(--black);padding-top:.25rem;margin:0}
.sign p:first-child{flex:2.2}
.foot{margin-top:3rem;border-top:1px solid var(--mid);padding-top:.5rem;font-size:.9rem}
${exchanged}
@media (max-width:34rem){.wide{overflow-x:auto}.wide table,.wide svg{min-width:30rem}dl div{grid-template-columns:1fr}table{font-size:.85rem}.blanks{flex-wrap:wrap}}
@media print{main{max-width:none;padding:0}h2,h3{break-after:avoid}figure,tr,.box,.blanks{break-inside:avoid}.break{break-after:page}@page{margin:18mm}}
`
