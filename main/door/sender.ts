/** Who may call main over IPC: the top frame of a page of ours, nobody else. */
import { isOwnPage } from '#main/navigation.ts'

/** What of Electron's WebFrameMain the check reads. */
export interface SenderFrame {
  readonly url: string
  readonly parent: unknown
}

/** A frame that is gone reads as null: a call from a page already left is refused too. */
export function isTrustedSender(frame: SenderFrame | null | undefined): boolean {
  return frame !== null && frame !== undefined && frame.parent === null && isOwnPage(frame.url)
}
