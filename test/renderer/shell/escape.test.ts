/** Escape leads back to the board from every page over it, unless a field, a list or a menu uses the key for itself. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { escapeEmpties } from '#renderer/part/draft.ts'
import { followEscape } from '#renderer/shell/keys.ts'
import { PAGE_COMMANDS, type PageId, backToBoard, openPage, page } from '#renderer/state/session/navigation.ts'

vi.mock('#renderer/host/host.ts', () => ({ inShell: () => false, onMenuCommand: () => {} }))

/** What of an element these keys ask for. */
class Thing extends EventTarget {
  readonly dataset: Record<string, string> = {}
  readonly blur = vi.fn()
  readonly sort: string
  constructor(sort: string) {
    super()
    this.sort = sort
  }
  matches(selector: string): boolean {
    return selector.split(', ').includes(this.sort)
  }
}

class Key extends Event {
  readonly key: string
  readonly ctrlKey: boolean = false
  readonly metaKey: boolean = false
  readonly altKey: boolean = false
  readonly shiftKey: boolean = false
  readonly repeat: boolean = false
  readonly isComposing: boolean = false
  constructor(key: string, how: Partial<Key>) {
    super('keydown', { bubbles: true, cancelable: true })
    this.key = key
    Object.assign(this, how)
  }
}

const body = new Thing('body')
/** Who listens to the window. */
const ears = new Set<(event: Event) => void>()
let stop = (): void => {}

/** A key goes to its element first, then, unless that keeps it, to the window. Answers with the page that is open then. */
function press(target: Thing = body, how: Partial<Key> = {}, key = 'Escape'): PageId {
  let kept = false
  const event = new Key(key, how)
  event.stopPropagation = () => {
    kept = true
  }
  target.dispatchEvent(event)
  if (!kept) {
    Object.defineProperty(event, 'target', { value: target })
    for (const ear of ears) ear(event)
  }
  return page.peek()
}

beforeEach(() => {
  vi.stubGlobal('HTMLElement', Thing)
  vi.stubGlobal('document', { activeElement: body })
  vi.stubGlobal('addEventListener', (_: string, ear: (event: Event) => void) => void ears.add(ear))
  vi.stubGlobal('removeEventListener', (_: string, ear: (event: Event) => void) => void ears.delete(ear))
  stop = followEscape()
})

afterEach(() => {
  stop()
  backToBoard()
  vi.unstubAllGlobals()
})

describe('Escape', () => {
  test.each(Object.keys(PAGE_COMMANDS) as PageId[])('leads from the page %s to the board', (id) => {
    openPage(id)
    expect(press()).toBe('board')
  })

  test('on the board is left to the board', () => {
    const preventDefault = vi.fn()
    press(body, { preventDefault })
    expect(preventDefault).not.toHaveBeenCalled()
  })

  test('leads on from a field that has nothing of its own to give up, taking what is typed elsewhere', () => {
    openPage('settings')
    const field = new Thing('input')
    field.dataset['draft'] = ''
    vi.stubGlobal('document', { activeElement: field })
    expect(press(new Thing('button'))).toBe('board')
    expect(field.blur).toHaveBeenCalledTimes(1)
  })

  test.each([
    ['of a list that may be open', new Thing('select'), {}],
    ['that ends what is being composed', new Thing('input'), { isComposing: true }],
    ['held down', body, { repeat: true }],
    ['with another key', body, { ctrlKey: true }],
  ] as const)('%s stays where it is', (_, target, how) => {
    openPage('settings')
    expect(press(target, how)).toBe('settings')
  })

  test('that something else has answered stays where it is', () => {
    openPage('settings')
    const menu = new Thing('div')
    menu.addEventListener('keydown', (event) => event.preventDefault())
    expect(press(menu)).toBe('settings')
  })

  test('no other key leads back', () => {
    openPage('help')
    expect(press(body, {}, 'Enter')).toBe('help')
  })

  test('empties a field that no record stands behind, and leads back once it is empty', () => {
    openPage('settings')
    const field = new Thing('input')
    let text = 'https://'
    field.addEventListener('keydown', (event) => {
      escapeEmpties(text, (typed) => (text = typed))(event as KeyboardEvent)
    })
    expect([press(field), text]).toEqual(['settings', ''])
    expect(press(field)).toBe('board')
  })
})
