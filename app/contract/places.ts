/** The call on the offline gazetteer: towns by name. */
import { z } from 'zod'
import { call } from './call.ts'

export const placeCalls = {
  'places.find': call(
    z.object({ text: z.string().max(200), limit: z.number().int().min(1).max(50) }),
    z.object({
      places: z.array(
        z.object({
          name: z.string(),
          country: z.string(),
          admin: z.string(),
          population: z.number(),
          lat: z.number(),
          lon: z.number(),
        }),
      ),
      attribution: z.string(),
    }),
  ),
} as const
