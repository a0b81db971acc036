/** How long a piece of work takes by itself: the processor's time in this thread, whatever else the machine is busy with. */

/** Milliseconds. */
export function ownTime(work: () => void): number {
  const before = process.threadCpuUsage()
  work()
  const { user, system } = process.threadCpuUsage(before)
  return (user + system) / 1_000
}
