import { X509Certificate } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request as httpRequest, type IncomingMessage } from 'node:http';
import { request as httpsRequest } from 'node:https';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';

import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { makeAuthority, makeLeaf } from '../../../src/server/makeCertificates.ts';
import { readServedFiles } from '../../../src/server/servedFiles.ts';
import {
  findServed,
  lanPlace,
  serveLan,
  serveLocally,
  type Served,
} from '../../../src/server/startServers.ts';

interface Answer {
  readonly status: number;
  readonly headers: IncomingMessage['headers'];
  readonly body: Buffer;
}

const FILM = Buffer.from(Array.from({ length: 1000 }, (_, i) => i % 251));
const SCRIPT = `export const wheel = '${'round '.repeat(200)}';`;

let folder: string;
let local: Served;
let lan: Served;
let authority: { key: string; certificate: string };

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tiltsweep-served-'));
  writeFileSync(join(folder, 'secret.txt'), 'not to be served');
  const dist = join(folder, 'dist');
  mkdirSync(join(dist, 'assets'), { recursive: true });
  writeFileSync(join(dist, 'index.html'), '<!doctype html><title>Shed</title>');
  writeFileSync(join(dist, 'sw.js'), SCRIPT);
  writeFileSync(join(dist, 'assets/index-CXKOqpxF.js'), SCRIPT);
  writeFileSync(join(dist, 'assets/front-CXKOqpxF.mp4'), FILM);
  writeFileSync(join(dist, '.hidden.txt'), 'not to be served');
  symlinkSync(join(folder, 'secret.txt'), join(dist, 'link.txt'));
  symlinkSync(folder, join(dist, 'up'));
  const files = readServedFiles(dist);
  authority = await makeAuthority(Date.now(), 'shed-pc');
  const names = { addresses: ['127.0.0.1'], hosts: ['shed-pc.local'] };
  const leaf = await makeLeaf(Date.now(), authority, names);
  const place = lanPlace('127.0.0.1', 4443, authority.certificate);
  const find = findServed(files, { place, authority: authority.certificate });
  const opened = await serveLocally(find, 0);
  const certificates = { authority, leaf, newAuthority: true };
  const openedLan = await serveLan(find, 0, ['127.0.0.1'], ['shed-pc.local'], certificates);
  if (!opened.ok || !openedLan.ok) throw new Error('not served');
  local = opened.value;
  lan = openedLan.value;
});

afterAll(() => {
  local.close();
  lan.close();
  rmSync(folder, { recursive: true });
});

function ask(path: string, headers = {}, method = 'GET'): Promise<Answer> {
  return answered(httpRequest({ host: '127.0.0.1', port: local.port, path, headers, method }));
}

function answered(request: ReturnType<typeof httpRequest>): Promise<Answer> {
  return new Promise((resolve, reject) => {
    request.on('error', reject);
    request.on('response', (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          body: Buffer.concat(parts),
        }),
      );
    });
    request.end();
  });
}

/** A request line as it is, which no client would send. */
function askRaw(text: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(local.port, '127.0.0.1', () => socket.write(text));
    let answer = '';
    socket.on('data', (part) => (answer += part.toString()));
    socket.on('close', () => resolve(answer));
    socket.on('error', reject);
  });
}

describe('server', () => {
  it('sends the page, asked about each time, and its parts, kept for ever', async () => {
    const page = await ask('/');
    expect(page).toMatchObject({ status: 200, headers: { 'cache-control': 'no-cache' } });
    expect(page.headers['content-type']).toBe('text/html; charset=utf-8');
    const part = await ask('/assets/index-CXKOqpxF.js');
    expect(part.headers['cache-control']).toBe('public, max-age=31536000, immutable');
    expect(part.body.toString()).toBe(SCRIPT);
    expect((await ask('/sw.js')).headers['cache-control']).toBe('no-cache');
  });

  it('says with a tag that nothing has changed', async () => {
    const { headers } = await ask('/');
    const again = await ask('/', { 'if-none-match': headers.etag });
    expect(again.status).toBe(304);
    expect(again.body).toHaveLength(0);
  });

  it('packs what can be packed, and tags the packed bytes as others', async () => {
    const plain = await ask('/sw.js');
    const packed = await ask('/sw.js', { 'accept-encoding': 'br, gzip' });
    expect(packed.headers['content-encoding']).toBe('gzip');
    expect(gunzipSync(packed.body).toString()).toBe(SCRIPT);
    expect(packed.headers.etag).not.toBe(plain.headers.etag);
    const unwanted = await ask('/sw.js', { 'accept-encoding': 'gzip;q=0' });
    expect(unwanted.headers['content-encoding']).toBeUndefined();
  });

  it('sends parts of a film', async () => {
    const film = '/assets/front-CXKOqpxF.mp4';
    const part = await ask(film, { range: 'bytes=100-199', 'accept-encoding': 'gzip' });
    expect(part).toMatchObject({ status: 206, headers: { 'content-range': 'bytes 100-199/1000' } });
    expect(part.body).toEqual(FILM.subarray(100, 200));
    const end = await ask(film, { range: 'bytes=-10' });
    expect(end.body).toEqual(FILM.subarray(990));
    const past = await ask(film, { range: 'bytes=1000-' });
    expect(past).toMatchObject({ status: 416, headers: { 'content-range': 'bytes */1000' } });
    const other = await ask(film, { range: 'bytes=0-9', 'if-range': '"another"' });
    expect(other.status).toBe(200);
    expect(other.body).toEqual(FILM);
  });

  it('sends no body for HEAD, and takes nothing else', async () => {
    const head = await ask('/', {}, 'HEAD');
    expect(head).toMatchObject({ status: 200 });
    expect(head.body).toHaveLength(0);
    expect(Number(head.headers['content-length'])).toBeGreaterThan(0);
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS', 'TRACE', 'PROPFIND']) {
      expect(await ask('/', {}, method)).toMatchObject({
        status: 405,
        headers: { allow: 'GET, HEAD' },
      });
    }
  });

  it.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/%252e%252e%252fsecret.txt',
    '/..\\secret.txt',
    '/link.txt',
    '/up/secret.txt',
    '/.hidden.txt',
    '/assets',
    '/assets/',
    '/index.html%00',
    '//127.0.0.1/index.html',
    '/secret.txt',
  ])('gives nothing for %s', async (path) => {
    const raw = await askRaw(`GET ${path} HTTP/1.1\r\nHost: localhost\r\n\r\n`);
    expect(raw).toMatch(/^HTTP\/1\.1 40[04] /);
    expect(raw).not.toContain('not to be served');
    expect(raw).toContain('X-Content-Type-Options: nosniff');
  });

  it('gives nothing for a whole address, as a proxy would', async () => {
    const raw = await askRaw('GET http://localhost/index.html HTTP/1.1\r\nHost: localhost\r\n\r\n');
    expect(raw).toMatch(/^HTTP\/1\.1 400 /);
    const tunnel = await askRaw('CONNECT localhost:22 HTTP/1.1\r\nHost: localhost\r\n\r\n');
    expect(tunnel).toBe('');
  });

  it.each([
    ['a null byte', 'GET /index.html\0.png HTTP/1.1\r\nHost: localhost\r\n\r\n'],
    [
      'a header without an end',
      `GET / HTTP/1.1\r\nHost: localhost\r\nX: ${'a'.repeat(40_000)}\r\n\r\n`,
    ],
    ['an address without an end', `GET /${'a'.repeat(40_000)} HTTP/1.1\r\nHost: localhost\r\n\r\n`],
    [
      'two lengths',
      'GET / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\nx',
    ],
    ['two hosts', 'GET / HTTP/1.1\r\nHost: localhost\r\nHost: shed.example\r\n\r\n'],
    ['no request', '\u0016\u0003\u0001 hello\r\n\r\n'],
  ])('refuses %s, and goes on', async (_, text) => {
    const raw = await askRaw(text);
    expect(raw).toMatch(/^(HTTP\/1\.1 4\d\d |$)/);
    expect(raw).not.toContain('<title>');
    expect(await ask('/')).toMatchObject({ status: 200 });
  });

  it('answers others while a hundred clients never end their requests', async () => {
    const slow = Array.from({ length: 100 }, () => connect(local.port, '127.0.0.1'));
    for (const socket of slow) {
      socket.on('error', () => undefined);
      socket.write('GET / HTTP/1.1\r\nHost: local');
    }
    expect(await ask('/')).toMatchObject({ status: 200 });
    for (const socket of slow) socket.destroy();
  });

  it('does not answer to a stranger’s name', async () => {
    expect(await ask('/', { host: 'shed.example:80' })).toMatchObject({ status: 421 });
    expect(await ask('/', { host: 'localhost:4173' })).toMatchObject({ status: 200 });
  });

  it('sends its security headers with every answer', async () => {
    for (const path of ['/', '/nothing', '/connect.html', '/%']) {
      const { headers } = await ask(path);
      expect(headers['content-security-policy']).not.toMatch(/unsafe|\*|https?:/);
      expect(headers['content-security-policy']).toContain("frame-ancestors 'none'");
      expect(headers['cross-origin-opener-policy']).toBe('same-origin');
      expect(headers['cross-origin-embedder-policy']).toBe('require-corp');
      expect(headers['permissions-policy']).toContain('camera=(self)');
      expect(headers['permissions-policy']).toContain('microphone=()');
      expect(headers['referrer-policy']).toBe('no-referrer');
    }
  });

  it('leads tablets here in their language, with the certificate to trust', async () => {
    const german = await ask('/connect.html', { 'accept-language': 'de' });
    expect(german.body.toString()).toContain('Zertifikat sichern');
    const page = (await ask('/connect.html')).body.toString();
    expect(page).toContain('https://127.0.0.1:4443/connect.html');
    const file = await ask('/tiltsweep-authority.crt');
    expect(file.headers['content-type']).toBe('application/x-x509-ca-cert');
    const certificate = new X509Certificate(file.body);
    expect(certificate.ca).toBe(true);
    expect(page.replaceAll('<wbr>', '')).toContain(certificate.fingerprint256);
    expect(file.body.toString('latin1')).not.toContain('PRIVATE');
  });

  it('is trusted over HTTPS by one who trusts the authority, and by nobody else', async () => {
    const options = { host: '127.0.0.1', port: lan.port, path: '/' };
    const trusting = await answered(httpsRequest({ ...options, ca: authority.certificate }));
    expect(trusting.status).toBe(200);
    await expect(answered(httpsRequest(options))).rejects.toThrow(/certificate/);
    const named = httpsRequest({
      ...options,
      ca: authority.certificate,
      servername: 'shed-pc.local',
      headers: { host: 'shed-pc.local' },
    });
    expect((await answered(named)).status).toBe(200);
  });
});
