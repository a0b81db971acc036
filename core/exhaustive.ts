/** Makes an unhandled variant a compile error: call it in the branch that can't be reached. */
export function exhaustive(value: never): never {
  throw new Error(`unhandled variant: ${JSON.stringify(value)}`)
}
