export { endsAsPdf, startsAsPdf } from '../pdf-marks.js'
export { annotationLook, type AnnotationLook } from './annotation-look.js'
export { BrokenPage, LookCopier } from './copy-look.js'
export { hidesLayers, numbersOf, readPages, type SourcePage } from './source-pages.js'
