/** Colours of the sketch map, on light paper and on dark. */

export interface SketchPalette {
  readonly name: 'light' | 'dark'
  readonly sea: string
  readonly waterline: string
  readonly land: string
  readonly coast: string
  readonly border: string
  readonly contour: string
  readonly majorContour: string
  readonly contourLabel: string
  /** Red, green, blue of slopes turned from and to the light, and how strong they are at most, 0..1. */
  readonly shade: readonly [number, number, number]
  readonly shadeStrength: number
  readonly glow: readonly [number, number, number]
  readonly glowStrength: number
  readonly wood: string
  readonly tuft: string
  readonly woodCrown: string
  readonly woodMark: string
  readonly beach: string
  readonly beachMark: string
  readonly field: string
  readonly tilledField: string
  readonly fieldWall: string
  readonly crag: string
  readonly water: string
  readonly waterEdge: string
  readonly roadCasing: string
  readonly road: string
  readonly minorRoad: string
  readonly track: string
  readonly path: string
  readonly building: string
  readonly buildingEdge: string
  readonly quay: string
  readonly quayEdge: string
  readonly bridge: string
  readonly label: string
  readonly landHalo: string
  readonly waterLabel: string
  readonly waterHalo: string
}

export const LIGHT_PALETTE: SketchPalette = {
  name: 'light',
  sea: '#e3e8e6',
  waterline: '#c3cdca',
  land: '#f3edde',
  coast: '#857e6c',
  border: '#b9ae98',
  contour: '#d3c6a5',
  majorContour: '#b9a878',
  contourLabel: '#94845a',
  shade: [92, 84, 70],
  shadeStrength: 0.5,
  glow: [255, 253, 245],
  glowStrength: 0.75,
  wood: '#dfe0c6',
  tuft: '#cfc7a4',
  woodCrown: '#98a37545',
  woodMark: '#9da27a',
  beach: '#f4e6c0',
  beachMark: '#d0b984',
  field: '#f1ecd6',
  tilledField: '#efe6cd',
  fieldWall: '#cbc1a8',
  crag: '#9d9380',
  water: '#dae2e1',
  waterEdge: '#93a2a1',
  roadCasing: '#a1977f',
  road: '#fffdf8',
  minorRoad: '#fffdf8',
  track: '#85785c',
  path: '#9a8d72',
  building: '#6c675d',
  buildingEdge: '#57524a',
  quay: '#e4dccb',
  quayEdge: '#7d7666',
  bridge: '#4f4b44',
  label: '#514c41',
  landHalo: '#f5f0e3',
  waterLabel: '#5f6c6d',
  waterHalo: '#e3e8e6',
}

export const DARK_PALETTE: SketchPalette = {
  name: 'dark',
  sea: '#252b31',
  waterline: '#3b444b',
  land: '#383a35',
  coast: '#8b8774',
  border: '#5d594e',
  contour: '#545143',
  majorContour: '#77704f',
  contourLabel: '#a39a76',
  shade: [12, 13, 14],
  shadeStrength: 0.62,
  glow: [122, 119, 100],
  glowStrength: 0.28,
  wood: '#343c30',
  tuft: '#55574a',
  woodCrown: '#56644a40',
  woodMark: '#59644b',
  beach: '#4a4535',
  beachMark: '#7b7150',
  field: '#3b3d36',
  tilledField: '#3e3d35',
  fieldWall: '#57544a',
  crag: '#7b7566',
  water: '#2b333a',
  waterEdge: '#65727a',
  roadCasing: '#1d1f20',
  road: '#9a9282',
  minorRoad: '#857e70',
  track: '#a79d84',
  path: '#8a8270',
  building: '#b3ac9c',
  buildingEdge: '#d0c9b8',
  quay: '#55524a',
  quayEdge: '#98917f',
  bridge: '#c9c3b4',
  label: '#d2ccbd',
  landHalo: '#2e302c',
  waterLabel: '#98a6ad',
  waterHalo: '#252b31',
}
