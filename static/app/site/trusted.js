import { files } from './files.js';

// The only scripts that are ever started by URL: the service worker and the
// core worker. Everything else is in the page's one bundle.
const allowed = new Set(['/sw.js', files['app/core/worker.js']]);

/**
 * Returns the URL if it is one of the two, else throws.
 *
 * @param {string} url
 */
export function allowedScript(url) {
  if (!allowed.has(url)) throw new TypeError(`not a script of this version: ${url}`);
  return url;
}

// Trusted Types, https://w3c.github.io/trusted-types/, where the browser has them.
/** @type {{ createScriptURL: (url: string) => string } | undefined} */
const policy = /** @type {any} */ (globalThis).trustedTypes?.createPolicy('app', {
  createScriptURL: allowedScript,
});

/**
 * Makes a script URL that `new Worker` and `register` accept under Trusted Types.
 *
 * @param {string} url
 */
export function scriptURL(url) {
  return policy ? policy.createScriptURL(url) : allowedScript(url);
}
