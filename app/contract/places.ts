/** The calls on what is known of places offline: towns by name, and the zones in use at a place. */
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
  // Any turn of the longitude is taken: a map scrolled past 180 degrees asks with it.
  'places.zones': call(
    z.object({ at: z.object({ lat: z.number().min(-90).max(90), lon: z.number() }) }),
    // The usual one first; more than one where two clocks are in use.
    z.object({ zones: z.array(z.string()).min(1), attribution: z.string() }),
  ),
} as const
