// The compiled engine: one function, from the text of a request to the text of its answer.

/** What the WebAssembly compiler's loader gives. */
export interface EngineModule {
  _malloc(bytes: number): number;
  _free(address: number): void;
  _offplumb_ask(text: number): number;
  lengthBytesUTF8(text: string): number;
  stringToUTF8(text: string, address: number, bytes: number): void;
  UTF8ToString(address: number): string;
}

export type EngineFactory = (options: {
  instantiateWasm?: (
    imports: WebAssembly.Imports,
    done: (instance: WebAssembly.Instance) => void,
  ) => object;
  wasmBinary?: ArrayBuffer | Uint8Array;
}) => Promise<EngineModule>;

export type Ask = (request: string) => string;

/** Asks through the module's memory. */
export function askOf(engine: EngineModule): Ask {
  return (request) => {
    const bytes = engine.lengthBytesUTF8(request) + 1;
    const address = engine._malloc(bytes);
    if (address === 0) throw new Error('The engine has no memory left. Load the page again.');
    try {
      engine.stringToUTF8(request, address, bytes);
      return engine.UTF8ToString(engine._offplumb_ask(address));
    } finally {
      engine._free(address);
    }
  };
}

/** Starts the engine from a compiled module, so that a second worker need not compile again. */
export async function startEngine(
  factory: EngineFactory, compiled: WebAssembly.Module): Promise<Ask> {
  const engine = await factory({
    instantiateWasm(imports, done) {
      void WebAssembly.instantiate(compiled, imports).then(done);
      return {};
    },
  });
  return askOf(engine);
}
