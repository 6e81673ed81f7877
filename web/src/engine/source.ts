// Where the compiled engine and its worker come from: files beside the page, or, in the one-file
// form, texts within it.
import wasmUrl from 'offplumb-engine-wasm?url';

/** Why the engine cannot start, in words for the person. */
export class EngineCannotStart extends Error {}

function textOf(id: string): string {
  const text = document.getElementById(id)?.textContent;
  if (!text) throw new EngineCannotStart(`This file is not whole: "${id}" is missing. Get it again.`);
  return text.trim();
}

function bytesOf(base64: string): Uint8Array<ArrayBuffer> {
  const binary = atob(base64);
  const bytes = new Uint8Array(binary.length);
  for (let i = 0; i < binary.length; i += 1) bytes[i] = binary.charCodeAt(i);
  return bytes;
}

async function fetchBytes(): Promise<ArrayBuffer> {
  const response = await fetch(wasmUrl);
  if (!response.ok) {
    throw new EngineCannotStart(
      `The engine did not load (${response.status}). Check the connection and load the page again.`);
  }
  return response.arrayBuffer();
}

/** Compiles the engine once; every worker then starts from the result. */
export async function compileEngine(): Promise<WebAssembly.Module> {
  if (typeof WebAssembly !== 'object') {
    throw new EngineCannotStart(
      'This browser cannot run WebAssembly, which the calculation needs. Some browsers switch it off ' +
      'in a strict or lockdown mode: switch that off for this page, or use another browser.');
  }
  try {
    return await WebAssembly.compile(ONE_FILE ? bytesOf(textOf('engine')) : await fetchBytes());
  } catch (error) {
    if (error instanceof EngineCannotStart) throw error;
    const words = error instanceof Error ? error.message : String(error);
    throw new EngineCannotStart(
      `The engine did not start in this browser (${words}). Load the page again; if that does not ` +
      'help, use another browser.');
  }
}

function workerWithin(): Worker {
  const url = URL.createObjectURL(new Blob([textOf('worker')], { type: 'text/javascript' }));
  try {
    return new Worker(url);
  } finally {
    // The worker has its own hold on the text by then.
    setTimeout(() => URL.revokeObjectURL(url), 10_000);
  }
}

/** A worker with the engine's code; nothing is started in it yet. */
export function makeWorker(): Worker {
  // In one statement, so that the build can take the other form's half out.
  return ONE_FILE
    ? workerWithin()
    : new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
}
