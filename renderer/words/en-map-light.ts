/** The words of the light on the map. */
export const mapLightWords = {
  removeLine: 'Remove',
} as const
