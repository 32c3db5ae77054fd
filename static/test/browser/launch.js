// Starts what a browser test needs: the server's program and a Chromium with a
// profile of its own. All of it ends with the test.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import puppeteer from 'puppeteer-core';
import { patience } from './patience.js';

// A test file that is given up must not leave its servers behind.
const servers = new Set();
process.once('SIGTERM', () => process.exit(1));
process.once('exit', () => servers.forEach((server) => server.kill()));

const root = fileURLToPath(new URL('../../..', import.meta.url));

/** Makes an empty folder that goes when the test `t` ends. */
export async function temporaryFolder(t) {
  const dir = await mkdtemp(join(tmpdir(), 'tidysump-'));
  t.after(() => rm(dir, { recursive: true, force: true, maxRetries: 5 }));
  return dir;
}

/** Where a program is: a bare name is looked for as the shell does, which puppeteer doesn't. */
const whole = (program) =>
  process.env.PATH.split(delimiter)
    .map((folder) => join(folder, program))
    .find((path) => !program.includes('/') && existsSync(path)) ?? program;

/**
 * Starts a Chromium; with a `profile` folder its storage outlives the browser,
 * `more` are further flags, `env` is what else its environment says.
 */
export async function launchChromium(profile, more = [], env = {}) {
  const browser = await puppeteer.launch({
    executablePath: whole(process.env.CHROMIUM ?? 'chromium'),
    headless: true,
    timeout: patience(),
    protocolTimeout: patience(180),
    userDataDir: profile,
    env: { ...process.env, ...env },
    args: [
      ...(process.getuid() === 0 ? ['--no-sandbox'] : []),
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      ...more,
    ],
  });
  const patient = (maker) => {
    const newPage = maker.newPage.bind(maker);
    maker.newPage = async () => {
      const page = await newPage();
      page.setDefaultTimeout(patience());
      return page;
    };
    return maker;
  };
  const createContext = browser.createBrowserContext.bind(browser);
  browser.createBrowserContext = async (...options) => patient(await createContext(...options));
  return patient(browser);
}

/** Starts a Chromium that closes when the test `t` ends. */
export async function openBrowser(t, profile, more, env) {
  const browser = await launchChromium(profile, more, env);
  t.after(() => browser.close());
  return browser;
}

/** Runs a program of build/ with arguments; throws unless it ends well. */
export async function run(program, ...args) {
  const child = spawn(join(root, 'build', program), args, { cwd: root, stdio: 'inherit' });
  const code = await new Promise((resolve) => child.on('exit', resolve));
  if (code !== 0) throw new Error(`${program} ${args.join(' ')} ended with ${code}`);
}

/**
 * Starts the server's program on a free port. Resolves, once it listens, to
 * {url, stop}; `stop` resolves to its exit code.
 */
export async function startServer(t, ...args) {
  const child = spawn(join(root, 'build/tidysump'), ['-addr', 'localhost:0', ...args], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const exited = new Promise((resolve) => child.on('exit', resolve));
  const stop = () => {
    child.ref();
    child.kill('SIGTERM');
    return exited;
  };
  t.after(stop);
  servers.add(child);
  const lines = createInterface(child.stdout);
  const line = await Promise.race([
    new Promise((resolve) => lines.once('line', resolve)),
    exited.then((code) => Promise.reject(new Error(`the server ended with ${code}`))),
  ]);
  // A test that failed before its end must not wait for the server.
  child.unref();
  child.stdout.unref();
  return { url: line.match(/https?:\S+/)[0] + '/', stop };
}
