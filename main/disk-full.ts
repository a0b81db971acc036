/** Tells a full disk from the other faults of a file system: no room on it, or none left of what this user may take. */
export function isDiskFull(error: unknown): boolean {
  return error instanceof Error && 'code' in error && (error.code === 'ENOSPC' || error.code === 'EDQUOT')
}
