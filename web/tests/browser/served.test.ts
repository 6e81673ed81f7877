// The server has the page inside it since it was built: is that the page these tests are about?
import { readdir, readFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { inject } from 'vitest';
import { expect, test } from './fixture';
import { serve } from './serving';

async function filesIn(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { withFileTypes: true });
  const found = await Promise.all(entries.map((entry) => entry.isDirectory()
    ? filesIn(join(folder, entry.name)) : [join(folder, entry.name)]));
  return found.flat();
}

test('the server hands out the page as it was built, byte for byte', async () => {
  const folder = inject('pageFolder');
  const files = await filesIn(folder);
  expect(files.length).toBeGreaterThan(5);
  const server = await serve();
  try {
    for (const file of files) {
      const path = relative(folder, file).split(sep).join('/');
      const answer = await fetch(new URL(path, server.address));
      expect(answer.status, path).toBe(200);
      const same = Buffer.from(await answer.arrayBuffer()).equals(await readFile(file));
      expect(same, `${path}: if not, build offplumb_serve again`).toBe(true);
    }
  } finally {
    await server.close();
  }
});
