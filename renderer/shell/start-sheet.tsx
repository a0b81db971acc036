/** The printed page's own entry: one spot's sheet and nothing else, named in the address. */
import { render } from 'preact'
import '@fontsource/source-sans-3/400.css'
import '@fontsource/source-sans-3/600.css'
import '@fontsource/source-serif-4/400-italic.css'
import { planOf } from '#core/plan/plan.ts'
import { openShoot, shoot, spots } from '#renderer/state/library/library.ts'
import { spotName } from '#renderer/text/names.ts'
import { loadSettings, takeSettings } from '#renderer/state/library/settings.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { showCrop } from '#renderer/view/lens-view/guide-choice.ts'
import { SheetPage } from '#renderer/page/sheet/sheet-page.tsx'
import '#renderer/style/ink.css'

async function start(): Promise<void> {
  const asked = new URLSearchParams(location.search)
  const spotId = asked.get('spot')
  await loadSettings()
  const paper = asked.get('paper')
  if (paper === 'a4' || paper === 'letter') takeSettings({ paper })
  const [wide = NaN, high = NaN] = (asked.get('crop') ?? '').split(':').map(Number)
  // One that the shoot doesn't have, or that can't be read, is none.
  showCrop({ wide, high })
  await openShoot(asked.get('shoot') ?? '', spotId)
  const spot = spots.value.find((candidate) => candidate.id === spotId)
  const page = document.querySelector('#page')
  if (page === null) return
  if (shoot.value === null || spot === undefined) {
    render(<main class="sheet-gone">{sheetWords.gone}</main>, page)
    document.documentElement.dataset['ready'] = 'yes'
    return
  }
  document.title = spotName(spot)
  render(<SheetPage plan={planOf(shoot.value, spot)} onBack={null} />, page)
}

void start()
