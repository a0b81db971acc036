/** The row side by side that tells how tight an arrangement is: what one is most easily off by too much. */
import { tightFirst, tightness } from '#core/tolerance/tolerance.ts'
import { offsetText } from '#renderer/text/tolerance-text.ts'
import { sensitivityWords } from '#renderer/words/en-sensitivity.ts'
import type { RowKind } from './compare-row.ts'

const { compare: say, ways } = sensitivityWords

export const OFF_ROWS: readonly RowKind[] = [
  {
    group: 'off',
    name: say.row,
    // Metres, degrees and minutes are held against each other by how easily one is so far off.
    better: 'more',
    read: ({ sensitivity }, units) => {
      if (sensitivity === 'working') return { figure: null, text: sensitivityWords.working }
      if (sensitivity === null) return { figure: null, text: say.notFramed }
      const [first] = tightFirst(sensitivity.off)
      if (first === undefined) return { figure: Number.MAX_VALUE, text: say.loose }
      const { move, offset } = first
      return { figure: tightness(first), text: say.text(offsetText(move, offset, units), ways[move]) }
    },
  },
]
