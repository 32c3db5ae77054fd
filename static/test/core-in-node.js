import { readFileSync } from 'node:fs';
import { door } from '../app/core/door.js';

const build = new URL('../../build/', import.meta.url);

/** Starts the built core in Node: call(operation, JSON) -> JSON. */
export async function coreInNode() {
  await import(new URL('wasm_exec.js', build));
  const go = new globalThis.Go();
  const { instance } = await WebAssembly.instantiate(
    readFileSync(new URL('core.wasm', build)),
    go.importObject,
  );
  go.run(instance);
  return door(instance);
}
