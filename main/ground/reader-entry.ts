/** Where the thread that reads elevation files begins: one task after the other, answered or told why not. */
import { messageOf } from '#core/message-of.ts'
import { parentPort } from 'node:worker_threads'
import type { FromReader, ReaderTasks, TaskName, ToReader } from './reader-task.ts'
import { readerWork } from './reader-work.ts'

const work = readerWork()

function send(message: FromReader, buffers: readonly ArrayBuffer[] = []): void {
  parentPort?.postMessage(message, buffers)
}

/** Samples are handed over, not copied. */
function buffersOf(answer: ReaderTasks[TaskName]['answer']): ArrayBuffer[] {
  const heights = answer !== null && 'heights' in answer ? answer.heights : null
  return heights === null ? [] : [heights.buffer as ArrayBuffer]
}

parentPort?.on('message', ({ id, name, task }: ToReader) => {
  // The name and its task belong together: the compiler can't follow that through the table.
  const run = work[name] as (task: unknown, alive: () => void) => Promise<ReaderTasks[TaskName]['answer']>
  run(task, () => send({ id, say: 'alive' })).then(
    (answer) => send({ id, say: 'done', answer }, buffersOf(answer)),
    (error: unknown) => send({ id, say: 'failed', message: messageOf(error) }),
  )
})
