/** Which file of the built page a module goes to: what both pages begin with, what the board alone does; the rest is for the bundler to lay out. */

/** Of a bundler's account of a module only what is asked for here. */
interface Graph {
  readonly getModuleInfo: (id: string) => { readonly importers: readonly string[] } | null
}

const PAGE = /[\\/](\w+)\.html$/u

/** The pages that fetch a module before anything is asked of them. */
function pagesWith(id: string, graph: Graph): ReadonlySet<string> {
  const importers = new Set([id])
  for (const one of importers) for (const importer of graph.getModuleInfo(one)?.importers ?? []) importers.add(importer)
  return new Set(Array.from(importers, (one) => PAGE.exec(one)?.[1] ?? '').filter((page) => page !== ''))
}

/**
 * Left to itself the bundler makes a file for each set of pages and late parts that share some modules: dozens that the board
 * fetches at once all the same, each compressed without knowing the others.
 */
export function chunkOf(id: string, graph: Graph): string | null {
  const isStart = graph.getModuleInfo(id)?.importers.some((importer) => PAGE.test(importer)) ?? false
  if (PAGE.test(id) || isStart) return null
  const pages = pagesWith(id, graph)
  if (!pages.has('index')) return null
  return pages.has('sheet') ? 'both' : 'board'
}
