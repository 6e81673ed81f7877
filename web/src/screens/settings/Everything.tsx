// Everything that this page keeps, in one file: out, and in again.
import { useState } from 'preact/hooks';
import { Doors } from '../../parts/Doors';
import { canShareFiles, download, share, textOfExport, type FileText } from '../../parts/files';
import { useApp, type App } from '../../state/app';
import { draftsOfBrowser, type Drafts } from '../../state/drafts';
import { applyMerge, planMerge, type Plan } from '../../state/merge';
import { listSetAside, shelfOfBrowser, type SetAside } from '../../state/shelf';
import { everythingText, parseStored, type Everything as Whole } from '../../state/storage';

const JSON_TYPE = 'application/json';

function fileText(app: App, drafts: Drafts): string {
  const { rigs, activeRig, hand, settings } = app.state.get();
  const stored = { rigs: rigs.map(({ id, toml }) => ({ id, toml })), activeRig, hand, settings };
  return everythingText(stored, drafts.list.get(), new Date());
}

/** "offplumb-2026-05-31.json", by the phone's own calendar. */
export function fileNameOn(day: Date): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  return `offplumb-${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}.json`;
}

interface Offer {
  file: string;
  whole: Whole;
  plan: Plan;
  left: string[];
}

export function Everything() {
  const app = useApp();
  const drafts = draftsOfBrowser();
  const [offer, setOffer] = useState<Offer | undefined>();
  const [refused, setRefused] = useState<string | undefined>();

  const look = async (file: FileText): Promise<void> => {
    setOffer(undefined);
    setRefused(undefined);
    try {
      if ('trouble' in file) throw new Error(file.trouble);
      const { everything, left } = parseStored(file.text);
      const plan = await planMerge(app, everything, drafts.list.get());
      setOffer({ file: file.name, whole: everything, plan, left });
    } catch (error) {
      setRefused(`${file.name}: not taken, ${error instanceof Error ? error.message : String(error)}. Nothing was changed.`);
    }
  };
  const choose = async (input: HTMLInputElement): Promise<void> => {
    const file = input.files?.[0];
    const text = file && await textOfExport(file);
    input.value = '';
    if (text) await look(text);
  };
  const take = (rest: boolean): void => {
    if (!offer) return;
    const undo = applyMerge(app, drafts, offer.plan, offer.whole, rest);
    setOffer(undefined);
    app.say(`${offer.file} was brought in.`, undo);
  };
  const save = (): void => download(fileNameOn(new Date()), fileText(app, drafts), JSON_TYPE);
  const handOn = async (): Promise<void> => {
    if ((await share(fileNameOn(new Date()), fileText(app, drafts))) !== 'refused') return;
    save();
    app.say('This browser does not hand files on: the file was saved instead.');
  };
  return (
    <section class="settings-part" aria-labelledby="settings-everything">
      <h2 id="settings-everything">Everything in one file</h2>
      <p class="soft">
        All rigs, what is unfinished, what is in hand and these settings. To keep it safe, or to take it to
        another phone.
      </p>
      <div class="row">
        <button type="button" class="button first" onClick={save}>Export</button>
        {canShareFiles() && <button type="button" class="button" onClick={() => void handOn()}>Share</button>}
        <label class="button settings-file">
          Import
          <input type="file" class="visually-hidden" data-import="everything"
            onChange={(event) => void choose(event.currentTarget)} />
        </label>
      </div>
      <div aria-live="polite">
        {refused && <p class="wrong settings-offer">{refused}</p>}
        {offer && <OfferSheet offer={offer} onTake={take} onLeave={() => setOffer(undefined)} />}
      </div>
      <Doors only={['storage']} />
      <Asides />
    </section>
  );
}

const FATES = { new: 'new here', same: 'here already, word for word: not brought in again' } as const;

/** What would come of it, before anything is changed. */
function OfferSheet({ offer, onTake, onLeave }: { offer: Offer; onTake(rest: boolean): void; onLeave(): void }) {
  const { file, whole, plan, left } = offer;
  const written = whole.written ? new Date(whole.written) : undefined;
  return (
    <div class="settings-offer">
      <h3>{file}{written && !Number.isNaN(written.getTime()) && `, written ${written.toLocaleDateString()}`}</h3>
      <ul>
        {plan.coming.map(({ rig, name, as, fate }) => (
          <li key={rig.id}><strong>{name}</strong>: {fate === 'renamed' ? `another of this name is here; comes in as "${as}"` : FATES[fate]}
            {rig.problem && '. It cannot be used as it is, and is kept'}</li>
        ))}
        {plan.coming.length === 0 && <li>No rigs.</li>}
        {plan.drafts.length > 0 && <li>{plan.drafts.length} unfinished.</li>}
        {left.length > 0 && <li class="wrong">Not understood, and left out: {left.join(', ')}.</li>}
      </ul>
      <p class="soft">Every rig that is here stays as it is.</p>
      <div class="row">
        <button type="button" class="button first" onClick={() => onTake(false)}>Bring the rigs in</button>
        <button type="button" class="button" onClick={() => onTake(true)}>Rigs, settings and what is in hand</button>
        <button type="button" class="button plain" onClick={onLeave}>Leave it</button>
      </div>
    </div>
  );
}

/** What an earlier start could not read and set aside: to be saved as a file. */
function Asides() {
  const shelf = shelfOfBrowser();
  const app = useApp();
  const [asides, setAsides] = useState<SetAside[]>(() => listSetAside(shelf));
  if (asides.length === 0) return null;
  const remove = ({ key, text }: SetAside): void => {
    shelf?.removeItem(key);
    setAsides(listSetAside(shelf));
    app.say('Removed.', () => {
      shelf?.setItem(key, text);
      setAsides(listSetAside(shelf));
    });
  };
  return (
    <div class="settings-offer">
      <h3>Set aside</h3>
      <p>This could not be read when the page started. Save it before you remove it; a newer page may read it.</p>
      <ul>
        {asides.map((aside) => (
          <li key={aside.key} class="row">
            <span class="grow">{aside.key.replace(/^offplumb-set-aside-/, '').slice(0, 16).replace('T', ' ')} UTC,
              {' '}{aside.text.length} letters</span>
            <button type="button" class="button"
              onClick={() => download(`${aside.key.replace(/:/g, '-')}.json`, aside.text, JSON_TYPE)}>Save</button>
            <button type="button" class="button" onClick={() => remove(aside)}>Remove</button>
          </li>
        ))}
      </ul>
    </div>
  );
}
