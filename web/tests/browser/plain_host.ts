// A host of plain files, such as anyone may put the page on: it sends types and nothing else, keeps
// it in a folder of its own, and lets browsers hold files for a while. What it holds can be changed,
// as when a new version is put there.
import { createServer, type Server } from 'node:http';
import { readFile } from 'node:fs/promises';
import { extname, join, normalize } from 'node:path';
import type { AddressInfo } from 'node:net';
import type { Served } from './serving';

const WITHIN = '/some/where/';
const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.wasm': 'application/wasm',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
};

export interface PlainHost extends Served {
  /** The folder that is handed out. */
  folder: string;
}

async function listening(server: Server): Promise<number> {
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return (server.address() as AddressInfo).port;
}

export async function hostPlainly(folder: string): Promise<PlainHost> {
  const host = { folder };
  const server = createServer(async (request, response) => {
    const path = new URL(request.url ?? '/', 'http://host').pathname;
    const name = normalize(path === WITHIN ? 'index.html' : path.slice(WITHIN.length));
    try {
      if (!path.startsWith(WITHIN) || name.startsWith('..')) throw new Error('not ours');
      const bytes = await readFile(join(host.folder, name));
      response.writeHead(200, {
        'Content-Type': types[extname(name)] ?? 'application/octet-stream',
        'Cache-Control': 'max-age=600',
      });
      response.end(bytes);
    } catch {
      response.writeHead(404, { 'Content-Type': 'text/plain' });
      response.end('There is no such file.');
    }
  });
  const port = await listening(server);
  return Object.assign(host, {
    address: `http://127.0.0.1:${port}${WITHIN}`,
    async close() {
      if (!server.listening) return;
      const closed = new Promise((resolve) => server.close(resolve));
      server.closeAllConnections();
      await closed;
    },
  });
}
