/** The shoot's page: the list of shoots, and the subject, landmarks, camera, lenses and crops of the one at work. */
import { NAME_MOST } from '#core/record/record-limits.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { Guarded } from '#renderer/part/guarded.tsx'
import { Icon } from '#renderer/part/icon.tsx'
import { PageFrame } from '#renderer/part/page-frame.tsx'
import { TextField } from '#renderer/part/text-field.tsx'
import { changeShoot } from '#renderer/state/library/history.ts'
import { openShoot, shoot, shootList } from '#renderer/state/library/library.ts'
import { shootName } from '#renderer/text/names.ts'
import { notDrawnWords } from '#renderer/words/en-not-drawn.ts'
import { words } from '#renderer/words/en.ts'
import { CameraForm } from './camera-form.tsx'
import { CropForm } from './crop-form.tsx'
import { LandmarkForm } from './landmark-form.tsx'
import { LensForm } from './lens-form.tsx'
import { chooseShootFile, deleteShoot, makeShoot, saveShootFile } from '#renderer/state/act/shoot-acts.ts'
import { SubjectForm } from './subject-form.tsx'

function ShootList() {
  return (
    <nav class="shoot-list" aria-label={words.shoot.shoots}>
      <h2>{words.shoot.shoots}</h2>
      <ul>
        {shootList.value.map((brief) => (
          <li key={brief.id}>
            <button
              type="button"
              class="brief"
              aria-current={brief.id === shoot.value?.id}
              onClick={() => void openShoot(brief.id)}
            >
              <strong>{shootName(brief).slice(0, 200)}</strong>
              <span class="spot-line">{words.shoot.spots(brief.spots)}</span>
            </button>
          </li>
        ))}
      </ul>
      <button type="button" class="button button-add" onClick={() => void makeShoot()}>
        <Icon name="add" /> {words.shoot.newShoot}
      </button>
      <button type="button" class="button button-add" onClick={chooseShootFile}>
        {words.board.files.open}
      </button>
    </nav>
  )
}

const { section } = notDrawnWords.parts

function ShootForm({ open }: { open: Shoot }) {
  return (
    <div class="shoot-form">
      <div class="shoot-name">
        <TextField
          label={words.shoot.name}
          value={open.name}
          most={NAME_MOST}
          placeholder={words.board.untitledShoot}
          onTake={(name) => void changeShoot(words.shoot.edit.rename, { ...open, name })}
        />
        <button type="button" class="button" onClick={() => void saveShootFile()}>
          {words.board.files.save}
        </button>
        <button type="button" class="button" onClick={() => void deleteShoot(open)}>
          <Icon name="remove" /> {words.shoot.deleteShoot}
        </button>
      </div>
      <div class="form-columns">
        <div>
          <Guarded part={section}>
            <SubjectForm shoot={open} />
          </Guarded>
          <Guarded part={section}>
            <LandmarkForm shoot={open} />
          </Guarded>
        </div>
        <div>
          <Guarded part={section}>
            <CameraForm shoot={open} />
          </Guarded>
          <Guarded part={section}>
            <LensForm shoot={open} />
          </Guarded>
          <Guarded part={section}>
            <CropForm shoot={open} />
          </Guarded>
        </div>
      </div>
    </div>
  )
}

export function ShootPage() {
  const open = shoot.value
  return (
    <PageFrame title={words.shoot.title}>
      <div class="shoot-page">
        <ShootList />
        {open === null ? (
          <p class="empty-note">{words.shoot.noShoot}</p>
        ) : (
          <Guarded key={open.id} part={notDrawnWords.parts.page}>
            <ShootForm open={open} />
          </Guarded>
        )}
      </div>
    </PageFrame>
  )
}
