/** The shelf on the left: find, the spots of the shoot in their order, what else is near. */
import { backToBoard } from '#renderer/state/session/navigation.ts'
import { useEffect, useRef } from 'preact/hooks'
import { Guarded } from '#renderer/part/guarded.tsx'
import { escapeEmpties } from '#renderer/part/draft.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { foldShelf, shelfFolded } from '#renderer/state/session/shelf-folded.ts'
import { openShoot, shoot, spotId, spots } from '#renderer/state/library/library.ts'
import { putOnBoard } from '#renderer/state/act/try-out.ts'
import { fitPlan } from '#renderer/state/session/map-window.ts'
import { makeShoot } from '#renderer/state/act/shoot-acts.ts'
import { bringStepsBack, stepsClosed } from '#renderer/state/session/first-steps.ts'
import { firstStepsWords } from '#renderer/words/en-first-steps.ts'
import { notDrawnWords } from '#renderer/words/en-not-drawn.ts'
import { headerWords } from '#renderer/words/en-header.ts'
import { words } from '#renderer/words/en.ts'
import { addSpot, placeSpot } from '#renderer/state/act/spot-acts.ts'
import { SpotCard } from './spot-card.tsx'
import { type SpotBrief, alsoNear, findText, followSearch, spotsFound, findFor } from './spot-find.ts'

/** Puts a spot on the board and the map where it lies. */
export async function chooseSpot(id: string, shootId: string | undefined = shoot.value?.id): Promise<void> {
  if (shootId !== undefined && shootId !== shoot.value?.id) await openShoot(shootId, id)
  else putOnBoard(id)
  backToBoard()
  fitPlan()
}

function FindBox() {
  const { shelf } = words.board
  return (
    <div class="find-box" role="search">
      <Icon name="find" />
      <input
        id="find-box"
        type="text"
        autocomplete="off"
        spellcheck={false}
        aria-label={shelf.find(spots.value.length)}
        placeholder={shelf.find(spots.value.length)}
        value={findText.value}
        onInput={(event) => {
          findFor(event.currentTarget.value)
        }}
        onKeyDown={escapeEmpties(findText.value, findFor)}
      />
      {findText.value === '' ? null : (
        <button
          type="button"
          class="icon-button"
          aria-label={shelf.clear}
          onClick={() => {
            findFor('')
          }}
        >
          <Icon name="close" />
        </button>
      )}
    </div>
  )
}

function BriefList({ briefs }: { briefs: readonly SpotBrief[] }) {
  const { shelf } = words.board
  return (
    <ul class="briefs">
      {briefs.map((brief) => (
        <li key={brief.id}>
          <button
            type="button"
            class="brief"
            aria-current={brief.id === spotId.value}
            onClick={() => void chooseSpot(brief.id, brief.shootId)}
          >
            <strong>{(brief.name.trim() === '' ? words.board.untitledSpot : brief.name).slice(0, 200)}</strong>
            <span class="spot-line">
              <Icon name={brief.status} /> {words.spot.statuses[brief.status]} ·{' '}
              {brief.shootId === shoot.value?.id
                ? shelf.thisShoot
                : shelf.anotherShoot((brief.shootName || words.board.untitledShoot).slice(0, 100))}
            </span>
          </button>
        </li>
      ))}
    </ul>
  )
}

function FoundList() {
  const { shelf } = words.board
  const hits = spotsFound.value
  if (hits === null) return null
  return (
    <section aria-label={shelf.find(spots.value.length)}>
      <p class="found-count" role="status">
        {hits.spots.length === 0 ? shelf.foundNothing(findText.value) : shelf.found(hits.spots.length, hits.total)}
      </p>
      <BriefList briefs={hits.spots} />
    </section>
  )
}

function NoShoot() {
  return (
    <>
      <p class="empty-note">{words.board.shelf.noShoot}</p>
      <button type="button" class="button" onClick={() => void makeShoot()}>
        <Icon name="add" /> {words.shoot.newShoot}
      </button>
    </>
  )
}

function OwnSpots() {
  const { shelf } = words.board
  const draggedRef = useRef<string | null>(null)
  const home = shoot.value
  if (home === null) return <NoShoot />
  const dropBefore = (id: string): void => {
    const moving = draggedRef.current
    draggedRef.current = null
    if (moving === null || moving === id) return
    void placeSpot(
      moving,
      spots.value.findIndex((spot) => spot.id === id),
    )
  }
  return (
    <section aria-label={shelf.thisShoot}>
      <h2>{shelf.thisShoot}</h2>
      {spots.value.length === 0 ? <p class="empty-note">{shelf.empty}</p> : null}
      {stepsClosed.value ? (
        <button type="button" class="button button-small steps-again" onClick={bringStepsBack}>
          {firstStepsWords.bringBack}
        </button>
      ) : null}
      <ul class="spots">
        {spots.value.map((spot) => (
          <Guarded key={spot.id} part={notDrawnWords.parts.spot}>
            <SpotCard
              shoot={home}
              spot={spot}
              on={spot.id === spotId.value}
              onChoose={(id) => void chooseSpot(id)}
              onDrag={(id) => {
                draggedRef.current = id
              }}
              onDropBefore={dropBefore}
            />
          </Guarded>
        ))}
      </ul>
      <button type="button" class="button button-add" title={shelf.addHint} onClick={() => void addSpot()}>
        <Icon name="add" /> {shelf.add}
      </button>
    </section>
  )
}

function FoldButton({ fold }: { readonly fold: boolean }) {
  const name = fold ? headerWords.foldShelf : headerWords.unfoldShelf
  return (
    <button
      type="button"
      class="icon-button"
      aria-label={name}
      title={name}
      aria-expanded={fold}
      onClick={() => foldShelf(fold)}
    >
      <Icon name={fold ? 'fold' : 'fold-out'} />
    </button>
  )
}

export function Shelf() {
  useEffect(followSearch, [])
  const { shelf } = words.board
  if (shelfFolded.value)
    return (
      <nav class="shelf shelf-folded" aria-label={shelf.title}>
        <FoldButton fold={false} />
        <span class="shelf-count">{spots.value.length}</span>
      </nav>
    )
  return (
    <nav class="shelf" aria-label={shelf.title}>
      <div class="shelf-head">
        <FindBox />
        <FoldButton fold />
      </div>
      <div class="shelf-lists">
        {findText.value.trim() === '' ? <OwnSpots /> : <FoundList />}
        {alsoNear.value.length > 0 && findText.value.trim() === '' ? (
          <section aria-label={shelf.nearHere}>
            <h2>{shelf.nearHere}</h2>
            <BriefList briefs={alsoNear.value.slice(0, 20)} />
          </section>
        ) : null}
      </div>
    </nav>
  )
}
