/** The row side by side that tells how tight an arrangement is: what one is most easily off by too much. */
import { tightFirst, tightness } from '#core/tolerance/tolerance.ts'
import { offsetText } from '#renderer/text/tolerance-text.ts'
import { toleranceWords } from '#renderer/words/en-tolerance.ts'
import type { RowKind } from './compare-row.ts'

const { compare: say, ways } = toleranceWords

export const OFF_ROWS: readonly RowKind[] = [
  {
    group: 'off',
    name: say.row,
    // Metres, degrees and minutes are held against each other by how easily one is so far off.
    better: 'more',
    read: ({ tolerances }, units) => {
      if (tolerances === 'working') return { figure: null, text: toleranceWords.working }
      if (tolerances === null) return { figure: null, text: say.notFramed }
      const [first] = tightFirst(tolerances.tolerances)
      if (first === undefined) return { figure: Number.MAX_VALUE, text: say.loose }
      const { move, offset } = first
      return { figure: tightness(first), text: say.text(offsetText(move, offset, units), ways[move]) }
    },
  },
]
