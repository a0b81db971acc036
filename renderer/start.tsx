/** The entry: brings the page up, draws it, then follows keys, files and other windows. */
import { followCalmly } from '#renderer/state/plan/calm-board.ts'
import { followWindows, followState, followDamage, followBackups } from '#renderer/shell/follow-state.ts'
import { bringUp } from '#renderer/shell/bring-up.ts'
import { runCommand } from '#renderer/shell/commands.ts'
import { render } from 'preact'
import { onFileOpened } from '#renderer/host/host.ts'
import { addShootFile } from '#renderer/state/act/shoot-acts.ts'
import { followHands } from '#renderer/state/act/live-change.ts'
import { followLeaving } from '#renderer/shell/leaving.ts'
import { followHealth } from '#renderer/state/session/network.ts'
import { followCommands } from '#renderer/shell/keys.ts'
import { followTolerances } from '#renderer/state/plan/board-tolerances.ts'
import { followPins } from '#renderer/state/plan/pin-heights.ts'
import { followTerrain } from '#renderer/state/plan/terrain.ts'
import { followZone } from '#renderer/state/plan/zone.ts'
import { WholePage } from '#renderer/shell/app-window.tsx'
import '#renderer/style/ink.css'
import '#renderer/style/type.css'
import '#renderer/style/part.css'
import '#renderer/style/date.css'
import '#renderer/style/board.css'
import '#renderer/view/map/map.css'
import '#renderer/panel/answers/answers.css'
import '#renderer/style/light.css'
import '#renderer/style/ground.css'
import '#renderer/panel/answers/tolerances.css'
import '#renderer/style/pages.css'

await bringUp()
followState()
followBackups()
followDamage()
followZone()
followCalmly()
followTerrain()
followPins()
followTolerances()
// What was asked for just now goes out before the page is drawn: drawing takes its time, and nothing is sent meanwhile.
await new Promise((done) => {
  setTimeout(done)
})
const root = document.getElementById('page')
if (root !== null) render(<WholePage onAgain={bringUp} />, root)
followCommands(runCommand)
followHands()
followLeaving()
onFileOpened((file) => void addShootFile(file.text))
followWindows()
followHealth()
