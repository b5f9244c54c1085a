export { readDefaultLook } from './default-look.js'
export { flattenForm } from './flatten-form.js'
export { FormFonts } from './form-fonts.js'
export { writeTextLook, type DrawnLook } from './text-look.js'
