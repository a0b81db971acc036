// Loaded before the program by a test: every step beyond this machine is written down and fails as it does with no network.
import dns from 'node:dns'
import { appendFileSync } from 'node:fs'
import { syncBuiltinESMExports } from 'node:module'
import net from 'node:net'

const HERE = /^(?:127\.|::1$|localhost$)/

function refuse(host) {
  appendFileSync(process.env.STANDPOINT_TEST_ASKED, `${host}\n`)
  return Object.assign(new Error(`no network for ${host}`), { code: 'ENETUNREACH' })
}

const lookUp = dns.lookup
dns.lookup = (host, ...rest) => (HERE.test(host) ? lookUp(host, ...rest) : rest.at(-1)(refuse(host)))
const promiseLookUp = dns.promises.lookup
dns.promises.lookup = async (host, ...rest) => {
  if (!HERE.test(host)) throw refuse(host)
  return promiseLookUp(host, ...rest)
}
// oxlint-disable-next-line typescript/unbound-method -- it is called with the socket it is called on
const connect = net.Socket.prototype.connect
net.Socket.prototype.connect = function (...given) {
  const [options] = Array.isArray(given[0]) ? given[0] : given
  const host = typeof options === 'object' ? (options.host ?? (options.path ? '127.0.0.1' : 'localhost')) : given[1]
  if (HERE.test(String(host))) return connect.apply(this, given)
  process.nextTick(() => this.destroy(refuse(String(host))))
  return this
}
syncBuiltinESMExports()
