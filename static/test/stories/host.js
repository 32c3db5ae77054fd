// The host of the stories: the built site as its server gives it, and beside it what
// the stories are made of. On one origin, so that a story can be put into the site's
// store; and no part of the site that is released.
import { readFile } from 'node:fs/promises';
import { createServer, request as ask } from 'node:http';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { phones } from '../browser/phones.js';

const here = fileURLToPath(new URL('.', import.meta.url));
const types = {
  '.css': 'text/css',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.png': 'image/png',
};

const of = (ending) => ({ 'content-type': types[ending], 'cache-control': 'no-store' });

/**
 * Starts it in front of the site at that URL; `folder` holds what is made of the
 * stories. "/?phone=NAME" is the site as it is on that phone. Resolves to {url, stop}.
 */
export async function startStoriesHost(site, folder, port = 0) {
  const answer = async ({ pathname, searchParams }) => {
    if (pathname === '/') return onPhone(site, searchParams.get('phone'));
    const [, phone] = pathname.match(/^\/stories\/phone\/(.*)\.js$/) ?? [];
    if (phone) return { body: before(decodeURIComponent(phone)), headers: of('.js') };
    const made = '/stories/made/';
    const file = pathname.startsWith(made)
      ? join(folder, pathname.slice(made.length))
      : join(here, pathname.slice('/stories/'.length));
    return { body: await readFile(file), headers: of(extname(file)) };
  };
  const server = createServer(async (request, response) => {
    const url = new URL(request.url, 'http://localhost');
    const ours = url.pathname.startsWith('/stories/') || url.searchParams.has('phone');
    if (!ours) return pass(site, request, response);
    try {
      const { body, headers } = await answer(url);
      response.writeHead(200, headers).end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise((resolve, reject) => {
    server.on('error', reject).listen(port, 'localhost', resolve);
  });
  return {
    url: `http://localhost:${server.address().port}/`,
    stop: () => (server.closeAllConnections(), server.close()),
  };
}

/** Passes a request on to the site, and its answer back. */
function pass(site, request, response) {
  const { method, url, headers } = request;
  const passed = ask(new URL(url, site), { method, headers }, (answer) => {
    response.writeHead(answer.statusCode, answer.headers);
    answer.pipe(response);
  });
  passed.on('error', () => response.destroy());
  request.pipe(passed);
}

/** The site's page with its headers, and the scripts of a phone and of the stories before its own. */
async function onPhone(site, phone) {
  const page = await fetch(site);
  const headers = Object.fromEntries(page.headers);
  for (const name of ['content-encoding', 'content-length', 'etag', 'vary']) delete headers[name];
  const scripts = [`/stories/phone/${encodeURIComponent(phone)}.js`, '/stories/taps.js'];
  const tags = scripts.map((src) => `<script src="${src}"></script>`).join('');
  const body = (await page.text()).replace('<script', `${tags}<script`);
  return { body, headers: { ...headers, 'cache-control': 'no-store' } };
}

/** Runs in the page, before it: all is kept for offline use, and nothing is. */
function withoutServiceWorker() {
  const active = {
    state: 'activated',
    addEventListener() {},
    postMessage(_, [port]) {
      const { content } = document.querySelector('meta[name="version"]');
      port.postMessage({ newest: content, served: content, have: 1, want: 1 });
    },
  };
  const registration = { active, waiting: null, addEventListener() {}, async update() {} };
  globalThis.ServiceWorkerContainer.prototype.register = async () => registration;
}

/** What runs in a phone's pages before they do. */
const before = (phone) =>
  [withoutServiceWorker, ...(phones[phone].before ?? [])].map((fn) => `(${fn})();\n`).join('');
