/** Small line drawings that go with words: never alone, hidden from screen readers. */

/** Paths on a 16 by 16 grid, drawn with the text's own ink. */
const PATHS = {
  up: 'M8 13V3.5M3.5 8 8 3.5 12.5 8',
  down: 'M8 3v9.5M3.5 8 8 12.5 12.5 8',
  unfold: 'M4 9.8 8 5.8 12 9.8',
  earlier: 'M10 3.5 5.5 8l4.5 4.5',
  later: 'M6 3.5 10.5 8 6 12.5',
  'week-earlier': 'M7.8 3.5 3.3 8l4.5 4.5M12.8 3.5 8.3 8l4.5 4.5',
  'week-later': 'M3.2 3.5 7.7 8l-4.5 4.5M8.2 3.5l4.5 4.5-4.5 4.5',
  calendar: 'M2.5 3.8h11v9.7h-11zM2.5 7h11M5.5 2v3M10.5 2v3',
  copy: 'M5.5 5.5h8v8h-8zM10.5 5.5v-3h-8v8h3',
  remove: 'M3 4.5h10M6.5 4.5v-2h3v2M4.5 4.5l.7 9h5.6l.7-9',
  add: 'M8 3v10M3 8h10',
  close: 'M4 4l8 8M12 4l-8 8',
  warning: 'M8 2.2 14.6 13.6H1.4zM8 6.5v3.6M8 11.9v.3',
  map: 'M2 4l4-1.5 4 1.5 4-1.5v9.5L10 13.5 6 12 2 13.5zM6 2.5V12M10 4v9.5',
  find: 'M7 2.5a4.5 4.5 0 1 0 0 9 4.5 4.5 0 0 0 0-9zM10.3 10.3 14 14',
  undo: 'M6 3 2.5 6.5 6 10M2.5 6.5h7a4 4 0 0 1 0 7H7',
  redo: 'M10 3l3.5 3.5L10 10M13.5 6.5h-7a4 4 0 0 0 0 7H9',
  settings:
    'M2 4.5h5.5M10.5 4.5H14M2 11.5h3.5M8.5 11.5H14M9 3a1.5 1.5 0 1 0 0 3 1.5 1.5 0 0 0 0-3zM7 10a1.5 1.5 0 1 0 0 3 1.5 1.5 0 0 0 0-3z',
  help: 'M5.4 6a2.6 2.6 0 1 1 3.8 2.3c-.8.4-1.2.9-1.2 1.9M8 12.8v.2',
  menu: 'M4 6.2 8 10.2 12 6.2',
  fold: 'M13 3v10M10 4.5 6.5 8l3.5 3.5',
  'fold-out': 'M3 3v10M6 4.5 9.5 8 6 11.5',
  landscape: 'M1.8 4.2h12.4v7.6H1.8z',
  portrait: 'M4.2 1.8h7.6v12.4H4.2z',
  thirds: 'M2 3h12v10H2zM6 3v10M10 3v10M2 6.3h12M2 9.7h12',
  centre: 'M8 2v3.2M8 10.8V14M2 8h3.2M10.8 8H14M8 6.6a1.4 1.4 0 1 0 0 2.8 1.4 1.4 0 0 0 0-2.8z',
  trade: 'M2 3h7v4.5H2zM7 8.5h7V13H7zM11.5 4.2l1.6 1.6 1.6-1.6M13.1 2.5v3.2M4.5 11.8l-1.6-1.6-1.6 1.6M2.9 13.5v-3.2',
  whole: 'M2.5 6V2.5H6M10 2.5h3.5V6M13.5 10v3.5H10M6 13.5H2.5V10',
  swap: 'M3 5.5h9.5M10 3l2.5 2.5L10 8M13 10.5H3.5M6 8l-2.5 2.5L6 13',
  idea: 'M8 2.2a4 4 0 0 0-2.2 7.3v1.7h4.4V9.5A4 4 0 0 0 8 2.2zM6.2 13.5h3.6',
  'to-visit': 'M2.5 8h10M8.5 4l4 4-4 4',
  visited: 'M3 8.5 6.5 12 13 4.5',
  chosen: 'M8 2l1.8 4 4.2.4-3.2 2.8 1 4.3L8 11.2l-3.8 2.3 1-4.3L2 6.4 6.2 6z',
  dropped: 'M8 2.5a5.5 5.5 0 1 0 0 11 5.5 5.5 0 0 0 0-11zM4.2 4.2l7.6 7.6',
} as const

export type IconName = keyof typeof PATHS

export function Icon({ name, filled = false }: { name: IconName; filled?: boolean }) {
  return (
    <svg class="icon" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
      <path
        d={PATHS[name]}
        fill={filled ? 'currentColor' : 'none'}
        stroke="currentColor"
        stroke-width="1.4"
        stroke-linejoin="round"
        stroke-linecap="round"
      />
    </svg>
  )
}
