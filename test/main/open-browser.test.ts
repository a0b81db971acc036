/** The command that opens the browser carries the address as one word and never the token. */
import { expect, test } from 'vitest'
import { openCommand } from '#main/open-browser.ts'

test.each([
  ['linux', ['xdg-open', 'http://127.0.0.1:1/open/x']],
  ['freebsd', ['xdg-open', 'http://127.0.0.1:1/open/x']],
  ['darwin', ['open', 'http://127.0.0.1:1/open/x']],
  ['win32', ['cmd.exe', '/c', 'start', '""', 'http://127.0.0.1:1/open/x']],
])('%s', (platform, command) => {
  expect(openCommand(platform, 'http://127.0.0.1:1/open/x')).toEqual(command)
})
