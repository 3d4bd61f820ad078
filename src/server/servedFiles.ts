import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { gzipSync } from 'node:zlib';

/** One file as it is sent. */
export interface ServedFile {
  readonly bytes: Buffer;
  /** The same, packed; null where packing saves nothing (films, pictures). */
  readonly gzipped: Buffer | null;
  readonly contentType: string;
  readonly cacheControl: string;
  /** Strong validator of the unpacked bytes (RFC 9110, section 8.8.3), with its quotes. */
  readonly etag: string;
}

/** Everything that is served, by its address from `/` on. What is not in here does not exist. */
export type ServedFiles = ReadonlyMap<string, ServedFile>;

/** Named after what is in it, so an address never gets another content: kept for a year. */
const HASHED_NAME = /^\/assets\/.+-[\w-]{8}\.\w+$/;
const KEEP_FOR_EVER = 'public, max-age=31536000, immutable';
/** Kept, but asked about each time: page, service worker and manifest tell of a new version. */
const ASK_EACH_TIME = 'no-cache';

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.mp4': 'video/mp4',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webm': 'video/webm',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
};
const UNKNOWN_TYPE = 'application/octet-stream';
const PACKABLE = /^text\/|json|svg|wasm/;

/**
 * Reads a built folder into memory once. From then on no address reaches the disk, so no trick with
 * a path can, and a build that runs meanwhile mixes nothing. Links are left out, wherever they
 * point; so are names that begin with a dot.
 */
export function readServedFiles(folder: string): ServedFiles {
  const files = new Map<string, ServedFile>();
  const walk = (under: string, address: string): void => {
    for (const entry of readdirSync(under, { withFileTypes: true })) {
      if (entry.name.startsWith('.')) continue;
      const path = join(under, entry.name);
      if (entry.isDirectory()) walk(path, `${address}${entry.name}/`);
      else if (entry.isFile()) {
        files.set(`${address}${entry.name}`, servedFile(`${address}${entry.name}`, path));
      }
    }
  };
  walk(folder, '/');
  return files;
}

function servedFile(address: string, path: string): ServedFile {
  const bytes = readFileSync(path);
  const contentType = TYPES[extname(path)] ?? UNKNOWN_TYPE;
  const cacheControl = HASHED_NAME.test(address) ? KEEP_FOR_EVER : ASK_EACH_TIME;
  return fileOf(bytes, contentType, cacheControl);
}

/** Makes a file out of bytes, for what is not on the disk. */
export function fileOf(
  bytes: Buffer,
  contentType: string,
  cacheControl: string = ASK_EACH_TIME,
): ServedFile {
  const packed = PACKABLE.test(contentType) ? gzipSync(bytes) : null;
  return {
    bytes,
    gzipped: packed !== null && packed.length < bytes.length ? packed : null,
    contentType,
    cacheControl,
    etag: `"${createHash('sha256').update(bytes).digest('base64url').slice(0, 22)}"`,
  };
}
