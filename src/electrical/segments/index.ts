export { recordSegments } from './record-segments.js'
export { sizeSegments, type CircuitInSegment, type SizedSegment } from './size-segments.js'
