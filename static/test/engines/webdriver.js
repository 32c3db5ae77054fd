// A session of WebDriver (W3C), over plain HTTP.
import { createServer } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import { patience } from '../browser/patience.js';

const polling = 50; // ms
const longest = 290_000; // ms; after 300 s fetch() gives up by itself, and doesn't say why

/** A port that nobody listens on. */
export async function freePort() {
  const server = createServer();
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address();
  await new Promise((resolve) => server.close(resolve));
  return port;
}

/** Sends one command; one that has no answer within its time fails. */
async function send(method, url, body, seconds = 60) {
  const response = await fetch(url, {
    method,
    body: body && JSON.stringify(body),
    headers: body && { 'content-type': 'application/json' },
    signal: AbortSignal.timeout(Math.min(patience(seconds), longest)),
  });
  const { value } = await response.json();
  if (response.ok) return value;
  throw new Error(`${method} ${new URL(url).pathname}: ${value.error}: ${value.message}`);
}

/** A session with a browser that the program behind a port has started. */
export class Session {
  /** What the browser says of itself. */
  capabilities;
  #url;

  /** Waits until the program listens, and has it start a browser. */
  static async begin(port, capabilities) {
    const url = `http://127.0.0.1:${port}`;
    const end = performance.now() + patience();
    while (!(await fetch(`${url}/status`).catch(() => undefined))) {
      if (performance.now() > end) throw new Error('the driver does not listen');
      await pause(polling);
    }
    const session = new Session();
    const begun = await send('POST', `${url}/session`, {
      capabilities: { alwaysMatch: capabilities },
    });
    session.#url = `${url}/session/${begun.sessionId}`;
    session.capabilities = begun.capabilities;
    return session;
  }

  get(path) {
    return send('GET', this.#url + path);
  }

  post(path, body = {}, seconds = undefined) {
    return send('POST', this.#url + path, body, seconds);
  }

  /** Ends it, and its browser. */
  end() {
    return send('DELETE', this.#url, undefined, 5);
  }
}
