// Made by the WebAssembly build: apps/wasm. The build says where it is.
declare module 'offplumb-engine' {
  import type { EngineFactory } from './module';
  const createEngine: EngineFactory;
  export default createEngine;
}
/** True in the one-file form of the page, which carries worker and engine within itself. */
declare const ONE_FILE: boolean;
/** The version of the page, from package.json. */
declare const VERSION: string;
