import { files } from '../site/files.js';
import { scriptURL } from '../site/trusted.js';
import { remoteWorker } from './remote.js';

/** @import { CoreWorker } from './remote.js' */

/** An empty program (WebAssembly core specification, 5.5.16). */
const program = Uint8Array.of(0, 0x61, 0x73, 0x6d, 1, 0, 0, 0);

/** Whether programs run here: older browsers know none, or don't know by which word the page's policy lets them. */
export function computes() {
  try {
    return Boolean(new WebAssembly.Module(program));
  } catch {
    return false;
  }
}

/**
 * Starts what computes: the core worker, or the server where that can't be. A worker that
 * ends in silence lets go of the lock that it holds from its start, and is reported like
 * one that failed; browsers know no other sign of it. Where there are no locks it is
 * missed at the client's deadline.
 *
 * @returns {CoreWorker}
 */
export function startCore() {
  if (!computes()) return remoteWorker();
  const name = `core ${Math.random()}`;
  const worker = new Worker(scriptURL(files['app/core/worker.js']), { type: 'module', name });
  const ended = () => worker.onerror?.(/** @type {any} */ (undefined));
  const watch = (/** @type {MessageEvent} */ { data }) =>
    data.held && navigator.locks.request(name, ended);
  worker.addEventListener('message', watch, { once: true });
  return worker;
}

/**
 * Calls fn once the first picture is on the screen, so that loading the core
 * doesn't delay it. A hidden page paints nothing and doesn't wait.
 *
 * @param {() => void} fn
 */
export function afterFirstPaint(fn) {
  if (document.visibilityState === 'hidden') setTimeout(fn);
  else requestAnimationFrame(() => setTimeout(fn));
}
