/* global Go, __FILES__ */
// The core worker: loads the WebAssembly program of its own version and hands it
// one call after the other. Messages out: {ready: true, held} once, {id, output} for
// each {id, op, input}, {failed: true} when there is no program to call (any more).
import 'wasm_exec.js';
import { door } from './door.js';

/** @type {any} */
const world = globalThis; // where a test may put another core
const coreURL = __FILES__['core.wasm'];

/** Bytes of a program's memory beyond which another takes its place: memory grows to what the largest call needed, and never shrinks. */
const large = 48 * 2 ** 20;

/** @param {WebAssembly.Imports} imports */
async function instantiate(imports) {
  try {
    return await WebAssembly.instantiateStreaming(fetch(coreURL), imports);
  } catch {
    // No streaming here, or the host sent another media type.
    const response = await fetch(coreURL);
    if (!response.ok) throw new Error(`core.wasm: ${response.status}`);
    return WebAssembly.instantiate(await response.arrayBuffer(), imports);
  }
}

const failed = () => postMessage({ failed: true });

/**
 * Starts the program, anew where it was loaded before; resolves to it and what it exports.
 *
 * @param {WebAssembly.Module} [loaded]
 */
async function start(loaded) {
  const go = new Go();
  const { module, instance } = loaded
    ? { module: loaded, instance: await WebAssembly.instantiate(loaded, go.importObject) }
    : await instantiate(go.importObject);
  // Runs until the program waits for calls; resolves only when it has exited.
  go.run(instance).then(failed, failed);
  world.tidysumpCall = door(instance);
  return { module, core: /** @type {any} */ (instance.exports) };
}

/**
 * Holds the lock of this worker's name for as long as it lives, by which the page knows
 * that it does; resolves to whether it is held, as soon as it is.
 */
const hold = () =>
  new Promise((resolve) => {
    const held = () => (resolve(true), new Promise(() => {}));
    if (!navigator.locks) resolve(false);
    else navigator.locks.request(self.name, held).catch(() => resolve(false));
  });

async function run() {
  let started = start();
  await started;
  onmessage = async ({ data: { id, op, input } }) => {
    try {
      const { module, core } = await started;
      postMessage({ id, output: world.tidysumpCall(op, input) });
      core.rest(); // while the page reads the answer
      if (core.mem.buffer.byteLength <= large) return;
      started = start(module);
      started.catch(failed);
    } catch {
      failed();
    }
  };
  postMessage({ ready: true, held: await hold() });
}

run().catch(failed);
