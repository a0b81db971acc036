/** The one map of every call between page and services; nothing else crosses the boundary. */
import type { z } from 'zod'
import { fileCalls } from './files.ts'
import { groundCalls } from './ground.ts'
import { libraryCalls } from './library.ts'
import { placeCalls } from './places.ts'
import { settingsCalls } from './settings.ts'
import { sheetCalls } from './sheet.ts'
import { tileCalls } from './tiles.ts'

export const contract = {
  ...libraryCalls,
  ...settingsCalls,
  ...tileCalls,
  ...placeCalls,
  ...sheetCalls,
  ...fileCalls,
  ...groundCalls,
} as const

export type Contract = typeof contract
export type CallName = keyof Contract
export type Input<Name extends CallName> = z.input<Contract[Name]['input']>
export type Output<Name extends CallName> = z.output<Contract[Name]['output']>
