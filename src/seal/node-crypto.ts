/** Node's own module for hashes and signatures, loaded when it is first needed: most starts need neither. */
export const nodeCrypto = () => process.getBuiltinModule('node:crypto')
