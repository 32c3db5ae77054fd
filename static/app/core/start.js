import { files } from '../site/files.js';
import { scriptURL } from '../site/trusted.js';
import { remoteWorker } from './remote.js';

/** @import { CoreWorker } from './remote.js' */

/**
 * Starts what computes: the core worker, or the server where that can't be.
 *
 * @returns {CoreWorker}
 */
export function startCore() {
  if (typeof WebAssembly === 'undefined') return remoteWorker();
  return new Worker(scriptURL(files['app/core/worker.js']), { type: 'module' });
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
