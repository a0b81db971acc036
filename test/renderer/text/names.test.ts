/** Nothing is ever called by an empty name: what has none of its own is called by what it is, on the board, side by side and on the sheet. */
import { expect, test } from 'vitest'
import { assess } from '#core/plan/assess.ts'
import { dayLight } from '#core/plan/day-light.ts'
import { compareRows } from '#renderer/page/compare/compare-rows.ts'
import {
  landmarkNameIn as nameInSentence,
  subjectNameIn as subjectInSentence,
} from '#renderer/view/lens-picture/picture-text.ts'
import { landmarkWords } from '#renderer/view/map/legend-words.ts'
import { settingRows } from '#renderer/page/sheet/sheet-settings.tsx'
import { landmarkName, lensTaken, shootName, spotName } from '#renderer/text/names.ts'
import { lensViewWords } from '#renderer/words/en-lens-view.ts'
import { groundMapWords } from '#renderer/words/en-ground-map.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { words } from '#renderer/words/en.ts'
import { ZOOM, bridgeAt, examplePlan } from '#test/help/plans.ts'

const at = { lat: -41.2, lon: 12.4 }

function unnamed(blank: string) {
  return examplePlan({
    lenses: [{ ...ZOOM, name: blank }],
    subject: { name: blank },
    landmark: { ...bridgeAt(at, 40, 600), name: blank },
    shoot: { name: blank },
    spot: { name: blank, hazards: [], hazardNote: 'loose stones' },
  })
}

/** The values of a row in both columns. */
function rowNamed(name: string, blank: string): readonly string[] {
  const plan = unnamed(blank)
  const assessment = assess(plan)
  const column = { plan, assessment, daylight: dayLight(plan, assessment, 'UTC'), tolerances: null, line: null }
  const row = compareRows([column, column], 'metric').find((candidate) => candidate.name === name)
  return row?.values ?? []
}

test.each(['', '   '])('a lens named “%s” is called by what it reaches', (blank) => {
  const range = '24–70 mm f/2.8'
  expect(rowNamed(sheetWords.compare.rows.lens, blank)).toEqual([range, range])
  const plan = unnamed(blank)
  const rows = settingRows({ plan, assessment: assess(plan), units: 'metric', crop: null })
  expect(rows.find(([name]) => name === sheetWords.lens)?.[1]).toBe(range)
  expect(lensTaken(plan.shoot.bag.lenses, null)).toBeNull()
  expect(lensTaken([], { lensId: 'gone' })).toBeNull()
})

test.each(['', '   '])('shoot, spot, landmark and subject named “%s” are called by what they are', (blank) => {
  const plan = unnamed(blank)
  expect(shootName(plan.shoot)).toBe(words.board.untitledShoot)
  expect(spotName(plan.spot)).toBe(words.board.untitledSpot)
  expect(landmarkName(plan.landmark)).toBe(words.shoot.unnamedLandmark)
  expect(nameInSentence(plan)).toBe(lensViewWords.theLandmark)
  expect(subjectInSentence(plan)).toBe(lensViewWords.theSubject)
  expect(landmarkWords(plan)).toBe(groundMapWords.atMiddle(groundMapWords.theLandmark))
})

test('the hazards side by side are told with the own words, though no kind is ticked', () => {
  expect(rowNamed(sheetWords.compare.rows.hazards, '')).toEqual(['loose stones', 'loose stones'])
})
