/** Words of where the view through the lens stands. */
export const picturePlaceWords = {
  trade: 'Trade picture and map',
  whole: 'Picture in the whole window',
  back: 'Picture back beside the map',
} as const
