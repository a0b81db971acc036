/** Owns which network addresses are out on the public internet, and which ones a tile source must never reach. */
import { BlockList, isIPv4, isIPv6 } from 'node:net'

/** IANA special-purpose registries for IPv4 and IPv6 (RFC 6890 and its updates), from memory. */
const NOT_PUBLIC_V4: readonly (readonly [string, number])[] = [
  ['0.0.0.0', 8],
  ['10.0.0.0', 8],
  ['100.64.0.0', 10],
  ['127.0.0.0', 8],
  ['169.254.0.0', 16],
  ['172.16.0.0', 12],
  ['192.0.0.0', 24],
  ['192.0.2.0', 24],
  ['192.88.99.0', 24],
  ['192.168.0.0', 16],
  ['198.18.0.0', 15],
  ['198.51.100.0', 24],
  ['203.0.113.0', 24],
  ['224.0.0.0', 4],
  ['240.0.0.0', 4],
]

/** Inside 2000::/3, the only part of IPv6 that is handed out; everything outside it is refused anyway. */
const NOT_PUBLIC_V6: readonly (readonly [string, number])[] = [
  ['2001::', 23],
  ['2001:db8::', 32],
  ['2002::', 16],
  ['3fff::', 20],
]

const notPublic = new BlockList()
for (const [network, bits] of NOT_PUBLIC_V4) notPublic.addSubnet(network, bits, 'ipv4')
for (const [network, bits] of NOT_PUBLIC_V6) notPublic.addSubnet(network, bits, 'ipv6')

const handedOut = new BlockList()
handedOut.addSubnet('2000::', 3, 'ipv6')

const loopback = new BlockList()
loopback.addSubnet('127.0.0.0', 8, 'ipv4')
loopback.addAddress('::1', 'ipv6')

/** False for anything private, link-local, loopback, reserved, or not an address at all. */
export function isPublicAddress(address: string): boolean {
  if (isIPv4(address)) return !notPublic.check(address, 'ipv4')
  if (!isIPv6(address) || address.includes('%')) return false
  return handedOut.check(address, 'ipv6') && !notPublic.check(address, 'ipv6')
}

export function isLoopbackAddress(address: string): boolean {
  if (isIPv4(address)) return loopback.check(address, 'ipv4')
  return isIPv6(address) && !address.includes('%') && loopback.check(address, 'ipv6')
}
