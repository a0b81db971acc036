/** What passes between a page and its worker: a job takes the place of the one of its kind that is still at work; answers come bit by bit. */

/** Jobs and updates tell their kind. */
export interface OfKind {
  readonly kind: string
}

export type WithKind<Any extends OfKind, Kind extends Any['kind']> = Extract<Any, { readonly kind: Kind }>

/** From the page. */
export type ToWorker<Job extends OfKind> =
  | { readonly say: 'do'; readonly id: number; readonly job: Job }
  | { readonly say: 'stop'; readonly id: number; readonly kind: Job['kind'] }

/** To the page. `share` of the job is done with this, 0..1; at 1 nothing more comes. */
export type FromWorker<Job extends OfKind, Update extends OfKind> =
  | { readonly say: 'found'; readonly id: number; readonly share: number; readonly update: Update }
  | { readonly say: 'failed'; readonly id: number; readonly kind: Job['kind']; readonly message: string }

/** What a job has found after some milliseconds of work. */
export interface Step<Update extends OfKind> {
  /** Of the whole job, 0..1; 1 with the last step. */
  readonly share: number
  readonly update: Update
}
