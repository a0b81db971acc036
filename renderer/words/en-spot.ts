/** Words about a spot: status, access, permission, hazards, and the usual cautions. */
import type { Hazard, PermissionState, SpotStatus } from '#core/record/spot.ts'

const statuses: Record<SpotStatus, string> = {
  idea: 'idea',
  'to-visit': 'to visit',
  visited: 'visited',
  chosen: 'chosen',
  dropped: 'dropped',
}

const permissions: Record<PermissionState, string> = {
  'not-needed': 'not needed',
  'to-ask': 'to ask',
  asked: 'asked',
  granted: 'granted',
  refused: 'refused',
}

/** As the shelf says it in two or three words. */
const permissionHints: Record<PermissionState, string> = {
  'not-needed': '',
  'to-ask': 'permission to ask',
  asked: 'permission asked',
  granted: 'permission granted',
  refused: 'permission refused',
}

const hazards: Record<Hazard, string> = {
  traffic: 'traffic',
  rail: 'rail',
  water: 'water',
  edge: 'edge',
  livestock: 'livestock',
  other: 'other',
}

/** Usual cautions (rule of thumb). None of them says that a place is safe, or that something is allowed. */
const cautions: Record<Hazard | 'always' | 'weather' | 'ground' | 'drones' | 'sun', string> = {
  traffic:
    'Traffic: stopping on a road or its verge may be forbidden and drivers do not expect you. Be seen, keep off the road, have somebody watch the traffic.',
  rail: 'Railway: tracks and the land beside them belong to the railway. Stay off them unless the railway itself takes you there; trains come fast and quietly.',
  water:
    'Water: watch out for tide, swell, current and slippery stone, and keep a way back. Look up the tide before you go.',
  edge: 'Edges: ground near a drop may give way, and it is easy to step back without looking while you look through the camera.',
  livestock: 'Livestock: leave gates as you find them, keep away from animals with young, and ask the farmer.',
  other: 'Look at the place yourself before you bring others there.',
  weather: 'Weather: wind, ice, heat and lightning change a place. Decide on the day, not in advance.',
  ground:
    'Private ground and permits: find out who is responsible for the ground and ask them; commercial photography may need a permit where a snapshot does not.',
  drones: 'Drones: have rules and no-fly areas of their own. Look them up for the place and day.',
  sun: 'Sun: never look at the sun through an optical finder. A long lens aimed at it can burn eyes, sensor and shutter.',
  always:
    'Local law and the people responsible for the ground decide what may be done. Standpoint does not know whether a place is safe or what is permitted there.',
}

export const spotWords = {
  title: 'What about this spot?',
  name: 'Name',
  notes: 'Notes',
  stars: 'Stars',
  noStars: 'No stars',
  status: 'Status',
  statuses,
  getThere: 'How do you get there?',
  parking: 'Parking',
  parkingNone: 'No parking point yet.',
  parkingRemove: 'Remove the parking point',
  walk: 'Walk from parking (min)',
  surface: 'Surface underfoot',
  surfaceHint: 'such as gravel, wet grass, steps',
  whoAsked: 'Who must be asked?',
  permission: 'Permission',
  permissions,
  permissionHints,
  whom: 'Contact',
  whomHint: 'Name, office, telephone',
  until: 'Valid until',
  watchFor: 'What to watch for?',
  hazards,
  hazardNote: 'Notes on hazards',
  hazardsLabel: 'Hazards seen here',
  cautions,
  edit: {
    name: 'Rename the spot',
    notes: 'Change the notes',
    stars: 'Change the stars',
    status: 'Change the status',
    parking: 'Change the parking point',
    access: 'Change the access',
    permission: 'Change the permission',
    hazards: 'Change the hazards',
  },
} as const
