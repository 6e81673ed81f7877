// What there is to tell: what this page can do here, the cautions, where the figures come from, version
// and licence.
import { useEffect, useState } from 'preact/hooks';
import licence from '../../../../LICENSE?raw';
import { Doors } from '../../parts/Doors';
import { usePhone } from '../../phone/start';
import { useApp } from '../../state/app';

const DOCS: [name: string, what: string][] = [
  ['docs/method.md', 'every equation with its source, what is not modelled, and measured errors'],
  ['docs/coefficients.md', 'every coefficient and default, each with its source or its mark: from memory, common practice, judgement'],
  ['docs/rig-file.md', 'every key of a rig, how to measure a line and a pull'],
];

/** Parts of others within the page and its engine, and their licences. */
const WITHIN: [name: string, licence: string][] = [
  ['Preact', 'MIT'], ['Eigen', 'MPL 2.0'], ['Boost', 'BSL 1.0'], ['fmt', 'MIT'], ['tl::expected', 'CC0 1.0'],
  ['JSON for Modern C++', 'MIT'], ['toml++', 'MIT'], ['the Emscripten runtime with musl and libc++', 'MIT and Apache 2.0 with LLVM exceptions'],
];

export function Telling() {
  const { about } = useApp();
  const cautions = [...new Set(Object.values(about.cautions).flat())];
  return (
    <>
      <section class="settings-part" aria-labelledby="settings-doors">
        <h2 id="settings-doors">What this page can do here</h2>
        <Doors only={['location', 'tilt', 'offline']} />
      </section>
      <section class="settings-part" aria-labelledby="settings-mind">
        <h2 id="settings-mind">Mind</h2>
        <div class="caution">{cautions.map((line) => <p key={line}>{line}</p>)}</div>
      </section>
      <section class="settings-part" aria-labelledby="settings-figures">
        <h2 id="settings-figures">Where the figures come from</h2>
        <p>
          Depths are worked out from the forces on the line, the ball and the tackle. What nobody has measured on
          your boat is drawn many times from a range: the drag of wire, braid and mono, of flasher and lure (the
          widest, half to twice), of the ball, the pull of the rod, the counter, the log. A band holds nine of ten
          of those answers. The ranges are judgement, not measurement. A calliper on the line puts the middle right; a
          spring scale on the flasher narrows the band.
        </p>
        <p>The manual that comes with the program has all of it:</p>
        <dl class="settings-docs">
          {DOCS.map(([name, what]) => <div key={name}><dt>{name}</dt><dd>{what}</dd></div>)}
        </dl>
      </section>
      <section class="settings-part" aria-labelledby="settings-version">
        <h2 id="settings-version">Version and licence</h2>
        <p>Page {VERSION}, engine {about.version}.</p>
        <Newer />
        <p>MIT: free to use, copy, change and pass on. No warranty of any kind.</p>
        <details class="settings-licence">
          <summary>The licence</summary>
          <pre>{licence}</pre>
          <p>Parts of others within, under their own licences: {WITHIN.map(([name, under]) => `${name} (${under})`).join(', ')}.</p>
        </details>
      </section>
    </>
  );
}

/** A newer version that waits for the next start. */
function Newer() {
  const app = useApp();
  const { offline } = usePhone();
  const [state, setState] = useState(offline.state);
  useEffect(() => offline.subscribe(setState), [offline]);
  if (state !== 'update_waiting') return null;
  const start = async (): Promise<void> => {
    app.storage.flush();
    if (!(await offline.takeUpdate())) app.say('This page is open elsewhere too. Close it there first.');
  };
  return (
    <p>
      A newer version is here. <button type="button" class="button" onClick={() => void start()}>Start it now</button>
    </p>
  );
}
