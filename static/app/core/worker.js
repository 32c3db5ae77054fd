/* global Go, __FILES__ */
// The core worker: loads the WebAssembly program of its own version and hands it
// one call after the other. Messages out: {ready: true} once, {id, output} for
// each {id, op, input}, {failed: true} when there is no program to call (any more).
import 'wasm_exec.js';
import { door } from './door.js';

/** @type {any} */
const world = globalThis; // where a test may put another core
const coreURL = __FILES__['core.wasm'];

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

async function run() {
  const go = new Go();
  const { instance } = await instantiate(go.importObject);
  // Runs until the program waits for calls; resolves only when it has exited.
  go.run(instance).then(failed, failed);
  world.tidysumpCall = door(instance);
  onmessage = ({ data: { id, op, input } }) => {
    postMessage({ id, output: world.tidysumpCall(op, input) });
  };
  postMessage({ ready: true });
}

run().catch(failed);
