/** Owns the loopback host's way out to the tile servers: one request by Node's own client, its answer read whole and bounded. */
import { Agent, type IncomingMessage, request as askPlainly, type RequestOptions } from 'node:http'
import { Agent as SecureAgent, request as askSecurely } from 'node:https'
import { CODINGS_TAKEN, codingOf, unpacked } from './coding.ts'
import { LARGEST_TILE_BYTES, type TileFetch } from './fetch.ts'

/** Headers of an answer that anybody here looks at; no other reaches the program. */
const TOLD = [
  'content-type',
  'content-encoding',
  'cache-control',
  'expires',
  'date',
  'age',
  'etag',
  'last-modified',
  'retry-after',
] as const

/** Connections are used again; those left idle end before most servers end them. */
const keepAlive = { keepAlive: true, maxFreeSockets: 2, timeout: 30_000 }
const plainAgent = new Agent(keepAlive)
const secureAgent = new SecureAgent(keepAlive)

/**
 * Not Node's own fetch: that one unpacks by whatever codings an answer names, and an answer it refuses for their number
 * leaves a stream behind whose fault nobody hears, which ends the process.
 */
export const nodeTileFetch: TileFetch = async (url, headers, signal) => {
  const answer = await answered(url, { ...headers, 'Accept-Encoding': CODINGS_TAKEN }, signal)
  const { statusCode: status = 0 } = answer
  const coding = codingOf(answer.headers['content-encoding'] ?? null)
  const passedOn = headersOf(answer)
  if (status !== 200 || coding === null) {
    answer.destroy()
    return new Response(null, { status, headers: passedOn })
  }
  const { body, whole } = await bodyOf(answer)
  // One byte too many says it all: whoever judges the answer finds it too large.
  if (!whole) return new Response(body, { status, headers: passedOn })
  const plain = await unpacked(body, coding, LARGEST_TILE_BYTES)
  passedOn.delete('content-encoding')
  if (plain.ok) return new Response(new Uint8Array(plain.body), { status, headers: passedOn })
  const size = plain.why === 'too-large' ? LARGEST_TILE_BYTES + 1 : 0
  return new Response(new Uint8Array(size), { status, headers: passedOn })
}

function answered(
  url: string,
  headers: Readonly<Record<string, string>>,
  signal: AbortSignal,
): Promise<IncomingMessage> {
  return asking(url, headers, signal).catch((error: unknown) => {
    // A connection kept from before may have been ended by the server at this very moment: that says nothing of it.
    if (error instanceof Error && 'reused' in error && !signal.aborted) return asking(url, headers, signal)
    throw error
  })
}

function asking(url: string, headers: Readonly<Record<string, string>>, signal: AbortSignal): Promise<IncomingMessage> {
  const { promise, resolve, reject } = Promise.withResolvers<IncomingMessage>()
  const secure = url.startsWith('https:')
  const options: RequestOptions = { headers, signal, agent: secure ? secureAgent : plainAgent }
  const asked = (secure ? askSecurely : askPlainly)(url, options, (answer) => {
    // Whatever happens to a body that is not read to its end has been heard.
    answer.on('error', () => undefined)
    resolve(answer)
  })
  // For the request's whole life: a connection may fail after its answer began, too.
  asked.on('error', (error) => reject(asked.reusedSocket ? Object.assign(error, { reused: true }) : error))
  asked.end()
  return promise
}

function headersOf(answer: IncomingMessage): Headers {
  const passedOn = new Headers()
  for (const name of TOLD) {
    const value = answer.headersDistinct[name]?.join(', ')
    if (value !== undefined) set(passedOn, name, value)
  }
  return passedOn
}

/** A value that is no header's is as good as not sent. */
function set(headers: Headers, name: string, value: string): void {
  try {
    headers.set(name, value)
  } catch {
    headers.delete(name)
  }
}

async function bodyOf(
  answer: IncomingMessage,
): Promise<{ readonly body: Buffer<ArrayBuffer>; readonly whole: boolean }> {
  const parts: Buffer[] = []
  let length = 0
  for await (const part of answer as AsyncIterable<Buffer>) {
    length += part.byteLength
    parts.push(part)
    if (length > LARGEST_TILE_BYTES) return { body: Buffer.concat(parts), whole: false }
  }
  return { body: Buffer.concat(parts), whole: true }
}
