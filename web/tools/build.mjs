// Builds both forms of the page. `npm run check` looks at the types; this does not.
import { buildFolder } from './folder-form.mjs';
import { PAGE_OUT, Refusal, SINGLE_OUT, needEngine } from './settings.mjs';
import { buildSingle } from './single-form.mjs';

try {
  needEngine();
  const folder = await buildFolder();
  console.log(`${PAGE_OUT}: ${folder.files} files, version ${folder.version}`);
  const single = await buildSingle();
  console.log(`${SINGLE_OUT}: ${Math.round(single.bytes / 1000)} kB`);
} catch (error) {
  console.error(error instanceof Refusal ? error.message : error);
  process.exitCode = 1;
}
