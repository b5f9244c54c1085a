export { FileError } from './file-error.js'
export { growingFile, type LineTarget } from './growing-file.js'
export { makeFolder } from './make-folder.js'
export { checkTarget, writeWhole } from './write-file.js'
