// Files in and out of the page.

/** A rig file or an export is some kilobytes; the engine reads at most this. */
const LARGEST_BYTES = 1_000_000;
/** An export holds many rigs. */
const LARGEST_EXPORT_BYTES = 50_000_000;

/** What is needed of a chosen file. */
type Chosen = Pick<File, 'name' | 'size' | 'arrayBuffer'>;

export type FileText = { name: string } & ({ text: string } | { trouble: string });

/** The text of a file that a person chose; or why it is none. */
export async function textOfFile(file: Chosen, most = LARGEST_BYTES): Promise<FileText> {
  const { name } = file;
  if (file.size > most) {
    return { name, trouble: `It has ${file.size} bytes; at most ${most} are read. It is not such a file.` };
  }
  try {
    return { name, text: new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer()) };
  } catch (error) {
    return { name, trouble: error instanceof TypeError
      ? 'It is no text in UTF-8. Save it as plain text in UTF-8 and choose it again.'
      : `The browser could not read it (${error instanceof Error ? error.message : String(error)}). ` +
        'Choose it again.' };
  }
}

export function textOfExport(file: Chosen): Promise<FileText> {
  return textOfFile(file, LARGEST_EXPORT_BYTES);
}

/** A name that every file system takes: "My boat: new" becomes "My boat new". */
export function fileNameFor(name: string, ending: string): string {
  // eslint-disable-next-line no-control-regex
  const plain = name.normalize('NFC').replace(/[\u0000-\u001f\u007f<>:"/\\|?*]+/g, ' ')
    .replace(/\s+/g, ' ').replace(/^[ .]+|[ .]+$/g, '').slice(0, 80).trim();
  const reserved = /^(con|prn|aux|nul|com\d|lpt\d)$/i.test(plain);
  return `${plain && !reserved ? plain : `rig ${plain}`.trim()}${ending}`;
}

/** Hands a text over as a file for the browser to save. */
export function download(name: string, text: string, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser has the file's bytes by then.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** The file in a form that this browser can hand on to another app; none: it cannot. */
function shareable(name: string, text: string): File | undefined {
  if (!('share' in navigator) || !('canShare' in navigator)) return undefined;
  // Some browsers hand on only endings that they know.
  return [name, `${name}.txt`].map((as) => new File([text], as, { type: 'text/plain' }))
    .find((file) => navigator.canShare({ files: [file] }));
}

export function canShareFiles(): boolean {
  return shareable('rig.toml', '') !== undefined;
}

/** 'shared', 'left' by the person, or 'refused' by the browser. */
export async function share(name: string, text: string): Promise<'shared' | 'left' | 'refused'> {
  for (const as of [name, `${name}.txt`]) {
    const file = shareable(as, text);
    if (!file) break;
    try {
      await navigator.share({ files: [file], title: name });
      return 'shared';
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return 'left';
    }
  }
  return 'refused';
}
