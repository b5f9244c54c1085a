const WORDS: Readonly<Record<string, string>> = {
  EACCES: 'no permission',
  EPERM: 'the system does not permit it',
  ENOENT: 'no such file or folder',
  EEXIST: 'the file exists already',
  EISDIR: 'it is a folder, not a file',
  ENOTDIR: 'a part of the path is a file, not a folder',
  ENOSPC: 'no space left on the disk',
  EDQUOT: 'the disk quota is used up',
  EROFS: 'the disk is read-only',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'its links go round in a circle',
  EMFILE: 'too many files are open',
  EBUSY: 'it is in use',
  EIO: 'the disk reports an error',
  EFBIG: 'the file would be too large',
  ERR_ACCESS_DENIED: '--untrusted forbids it: only the folder of the project is read, only what --out names is written',
}

/** A system error in plain words: `no permission (EACCES)`; undefined for any other error. */
export function errnoWords(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string') return undefined
  const words = WORDS[error.code]
  // What the engine itself refuses names no call of the system.
  if (!('syscall' in error) && error.code !== 'ERR_ACCESS_DENIED') return undefined
  return words === undefined ? `the system reports ${error.code}` : `${words} (${error.code})`
}
