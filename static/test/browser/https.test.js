import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { get } from 'node:http';
import { join } from 'node:path';
import { test } from 'node:test';
import { setTimeout as pause } from 'node:timers/promises';
import { connect } from 'node:tls';
import { freePorts, startAuthority } from './authority.js';
import { openBrowser, startServer, temporaryFolder } from './launch.js';
import { askCore, untilState } from './page.js';
import { installErrors } from './watch.js';

const name = 'workshop.example';
const day = 24 * 60 * 60;

/**
 * The server's program with certificates from an authority of its own: {certs, ports,
 * authority, start}. `start` starts it, again with what it kept.
 */
async function secureServer(t, seconds) {
  const folder = await temporaryFolder(t);
  const [tls, http] = await freePorts(2);
  const certs = join(folder, 'certs');
  const authority = await startAuthority(t, folder, { seconds, tls, http });
  const at = ['-addr', `127.0.0.1:${tls}`, '-plain', `127.0.0.1:${http}`];
  const start = () => startServer(t, ...at, '-domain', name, '-certs', certs, ...authority.flags);
  return { folder, certs, ports: { tls, http }, authority, start };
}

/** The certificate that the server shows; throws unless it is good today for its name. */
async function certificate(port, roots) {
  const ca = await readFile(roots);
  return new Promise((resolve, reject) => {
    const line = connect({ port, host: '127.0.0.1', servername: name, ca }, () => {
      resolve(line.getPeerCertificate());
      line.end();
    });
    line.on('error', reject);
  });
}

/** A home in which Chromium finds the authority among those that the person trusts. */
function trustingHome(folder, roots) {
  const store = join(folder, '.pki/nssdb');
  mkdirSync(store, { recursive: true });
  const certutil = (...args) =>
    execFileSync(process.env.CERTUTIL ?? 'certutil', ['-d', `sql:${store}`, ...args]);
  certutil('-N', '--empty-password');
  certutil('-A', '-n', 'authority', '-t', 'C,,', '-i', roots);
  return { HOME: folder };
}

test('the page is installed over HTTPS with a certificate that was got by ACME', async (t) => {
  const { folder, ports, authority, start } = await secureServer(t, 90 * day);
  const server = await start();
  assert.equal(server.url, `https://${name}:${ports.tls}/`);
  const rules = `MAP ${name}:443 127.0.0.1:${ports.tls},MAP ${name}:80 127.0.0.1:${ports.http}`;
  const home = trustingHome(folder, authority.roots);
  const browser = await openBrowser(
    t,
    join(folder, 'profile'),
    [`--host-resolver-rules=${rules}`],
    home,
  );
  const page = await browser.newPage();
  await page.goto(`http://${name}/`);
  assert.equal(page.url(), `https://${name}/`);
  await untilState(page, 'ready');
  const [protocol, safe] = await page.evaluate(() => [
    performance.getEntriesByType('navigation')[0].nextHopProtocol,
    isSecureContext,
  ]);
  assert.deepEqual([protocol, safe], ['h2', true]);
  assert.deepEqual(await installErrors(page), []);

  authority.stop();
  assert.equal(await server.stop(), 0);
  await page.goto(`https://${name}/?from=icon`);
  await untilState(page, 'ready');
  assert.equal(await askCore(page), 'unknown-op');
});

test('a certificate is kept from one start to the next', async (t) => {
  const { ports, authority, start } = await secureServer(t, 90 * day);
  const first = await start();
  const { serialNumber } = await certificate(ports.tls, authority.roots);
  assert.equal(await first.stop(), 0);
  authority.stop();
  await start();
  assert.equal((await certificate(ports.tls, authority.roots)).serialNumber, serialNumber);
});

test('a certificate is renewed before it ends, and the new one is kept', async (t) => {
  const { ports, certs, authority, start } = await secureServer(t, 12);
  await start();
  const first = await certificate(ports.tls, authority.roots);
  const kept = await readFile(join(certs, name), 'utf8');
  let now = first;
  while (now.serialNumber === first.serialNumber) {
    await pause(200);
    now = await certificate(ports.tls, authority.roots); // throws if it ended
  }
  assert.ok(Date.parse(now.valid_to) > Date.parse(first.valid_to), now.valid_to);
  assert.notEqual(await readFile(join(certs, name), 'utf8'), kept);
});

test('plain HTTP leads to HTTPS, and nobody else gets a certificate', async (t) => {
  const { ports, authority, start } = await secureServer(t, 90 * day);
  await start();
  const answer = await new Promise((resolve, reject) => {
    const headers = { host: name };
    get({ port: ports.http, path: '/?from=icon', headers }, resolve).on('error', reject);
  });
  answer.resume();
  assert.deepEqual(
    [answer.statusCode, answer.headers.location],
    [308, `https://${name}/?from=icon`],
  );
  const stranger = new Promise((resolve, reject) => {
    connect({ port: ports.tls, host: '127.0.0.1', servername: 'elsewhere.example' }, resolve).on(
      'error',
      reject,
    );
  });
  await assert.rejects(stranger, /alert/);
  assert.ok(await certificate(ports.tls, authority.roots));
});
