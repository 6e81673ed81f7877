// What each file of the folder form is for: loaded at once, or with which screen.

function isAsset(file) {
  return file.type === 'asset';
}

/** All chunks that come with a chunk, itself first. */
function withImports(bundle, fileName, found = new Set()) {
  if (found.has(fileName)) return found;
  found.add(fileName);
  for (const imported of bundle[fileName]?.imports ?? []) withImports(bundle, imported, found);
  return found;
}

function stylesOf(bundle, fileNames) {
  return fileNames.flatMap((name) => [...(bundle[name].viteMetadata?.importedCss ?? [])]);
}

/**
 * `first` is what the first load fetches, by kind; `screens` what each lazily loaded chunk adds, by
 * its name. A chunk that several screens share stands under its own name.
 */
export function partsOf(bundle) {
  const files = Object.values(bundle);
  const entry = files.find((file) => file.type === 'chunk' && file.isEntry);
  if (!entry) throw new Error('the build gave no entry chunk');
  const first = [...withImports(bundle, entry.fileName)];
  const assets = files.filter(isAsset).map((file) => file.fileName);
  const screens = {};
  for (const chunk of files.filter((file) => file.type === 'chunk')) {
    if (first.includes(chunk.fileName)) continue;
    const known = screens[chunk.name] ?? [];
    screens[chunk.name] = [...known, chunk.fileName, ...stylesOf(bundle, [chunk.fileName])];
  }
  return {
    first: {
      html: assets.filter((name) => name.endsWith('.html')),
      style: [...new Set(stylesOf(bundle, first))],
      script: first,
      worker: assets.filter((name) => /^assets\/worker-.*\.js$/.test(name)),
      engine: assets.filter((name) => name.endsWith('.wasm')),
      manifest: ['manifest.webmanifest'],
    },
    screens,
  };
}
