import type { IncomingMessage, RequestListener, ServerResponse } from 'node:http';

import { byteRange } from './byteRange.ts';
import { requestedAddress } from './requestedAddress.ts';
import { securityHeaders } from './securityHeaders.ts';
import type { ServedFile } from './servedFiles.ts';

/** Finds what stands at an address; the request is there for what depends on language. */
export type FindFile = (address: string, request: IncomingMessage) => ServedFile | undefined;

/**
 * Answers requests with the files that `find` knows, whole, in part or not at all, each with the
 * security headers. `hosts` are the names and addresses under which this server is known: a request
 * that came under another name (a stranger's name that was pointed at this machine) is refused.
 */
export function answerRequest(find: FindFile, hosts: ReadonlySet<string>): RequestListener {
  const headers = Object.entries(securityHeaders());
  return (request, response) => {
    for (const [name, value] of headers) response.setHeader(name, value);
    // Two names are one to be checked and one to be believed (RFC 9112, section 3.2).
    if ((request.headersDistinct['host'] ?? []).length > 1) return refuse(response, 400);
    if (!hosts.has(hostOf(request.headers.host))) return refuse(response, 421);
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.setHeader('Allow', 'GET, HEAD');
      return refuse(response, 405);
    }
    const address = requestedAddress(request.url ?? '');
    if (!address.ok) return refuse(response, 400);
    const file = find(address.value, request);
    if (!file) return refuse(response, 404);
    sendFile(request, response, file);
  };
}

/** Host without its port: `localhost`, `192.168.0.5`, `[::1]`. */
function hostOf(header: string | undefined): string {
  return (header ?? '').toLowerCase().replace(/:\d{1,5}$/, '');
}

const REASONS: Readonly<Record<number, string>> = {
  400: 'This address is not understood.',
  404: 'There is nothing at this address.',
  405: 'This server only sends files.',
  416: 'The file ends before that part.',
  421: 'This server does not go by that name.',
};

function refuse(response: ServerResponse, status: number): void {
  response.statusCode = status;
  response.setHeader('Content-Type', 'text/plain; charset=utf-8');
  response.setHeader('Cache-Control', 'no-store');
  // What came with the request is not read, so the connection cannot be used again.
  response.setHeader('Connection', 'close');
  response.end(`${REASONS[status]}\n`);
}

function sendFile(request: IncomingMessage, response: ServerResponse, file: ServedFile): void {
  const { bytes, gzipped } = file;
  response.setHeader('Content-Type', file.contentType);
  response.setHeader('Cache-Control', file.cacheControl);
  if (gzipped) response.setHeader('Vary', 'Accept-Encoding');
  else response.setHeader('Accept-Ranges', 'bytes');
  const packed = gzipped !== null && acceptsGzip(request) ? gzipped : null;
  // Packed bytes are other bytes: a part of them is no part of the file (RFC 9110, section 8.8.3.3).
  const etag = packed ? file.etag.replace(/"$/, '-gzip"') : file.etag;
  response.setHeader('ETag', etag);
  if (namesTag(request.headers['if-none-match'], etag)) {
    response.writeHead(304).end();
    return;
  }
  if (packed) {
    response.setHeader('Content-Encoding', 'gzip');
    return send(request, response, 200, packed);
  }
  const partial = gzipped === null && request.method === 'GET' && rangeStillHolds(request, etag);
  const part = byteRange(partial ? request.headers.range : undefined, bytes.length);
  if (part === 'unsatisfiable') {
    response.removeHeader('ETag');
    response.setHeader('Content-Range', `bytes */${bytes.length}`);
    return refuse(response, 416);
  }
  if (part === null) return send(request, response, 200, bytes);
  const { firstByte, lastByte } = part;
  response.setHeader('Content-Range', `bytes ${firstByte}-${lastByte}/${bytes.length}`);
  send(request, response, 206, bytes.subarray(firstByte, lastByte + 1));
}

function send(
  request: IncomingMessage,
  response: ServerResponse,
  status: number,
  bytes: Buffer,
): void {
  response.writeHead(status, { 'Content-Length': bytes.length });
  response.end(request.method === 'HEAD' ? undefined : bytes);
}

function acceptsGzip(request: IncomingMessage): boolean {
  const accepted = request.headers['accept-encoding'] ?? '';
  return /(^|[\s,])gzip(?!\s*;\s*q=0(\.0*)?\s*(,|$))/i.test(String(accepted));
}

/** A download that goes on where it broke off names what it has: of another version it gets all. */
function rangeStillHolds(request: IncomingMessage, etag: string): boolean {
  const condition = request.headers['if-range'];
  return condition === undefined || condition === etag;
}

function namesTag(header: string | undefined, etag: string): boolean {
  if (header === undefined) return false;
  return header
    .split(',')
    .map((tag) => tag.trim().replace(/^W\//, ''))
    .some((tag) => tag === etag || tag === '*');
}
