import { readFileSync } from 'node:fs';
import { door } from '../app/core/door.js';

const build = new URL('../../build/', import.meta.url);

/**
 * Starts the built core, or another one, in Node: the instance of its program. `env` is
 * the program's environment, such as { GOGC: '1' }.
 */
export async function programInNode(core = new URL('core.wasm', build), env = {}) {
  await import(new URL('wasm_exec.js', build));
  const go = new globalThis.Go();
  go.env = env;
  const { instance } = await WebAssembly.instantiate(readFileSync(core), go.importObject);
  go.run(instance);
  return instance;
}

/** Starts a core as programInNode does: call(operation, JSON) -> JSON. */
export const coreInNode = async (...which) => door(await programInNode(...which));
