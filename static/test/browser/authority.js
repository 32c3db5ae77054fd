// A certificate authority on this machine that speaks ACME (RFC 8555), with a name
// server that finds every host here.
import { execFile, spawn } from 'node:child_process';
import { Resolver } from 'node:dns/promises';
import { writeFile } from 'node:fs/promises';
import { request } from 'node:https';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const command = promisify(execFile);
const root = fileURLToPath(new URL('../../..', import.meta.url));
const packages = 'github.com/letsencrypt/pebble/v2/cmd/';

/** Ports of this machine that nobody listens on. */
export async function freePorts(count) {
  const servers = await Promise.all(
    Array.from({ length: count }, async () => {
      const server = createServer();
      await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
      return server;
    }),
  );
  const ports = servers.map((server) => server.address().port);
  await Promise.all(servers.map((server) => new Promise((resolve) => server.close(resolve))));
  return ports;
}

/**
 * Starts an authority whose certificates are good for so many `seconds`. It asks on
 * the ports `tls` and `http`, in place of 443 and 80, whether a name is the
 * asker's. Resolves to {flags, roots, stop}: the flags that send the server's program
 * there, a file with what its certificates are trusted by, and its end.
 */
export async function startAuthority(t, folder, { seconds, tls, http }) {
  const programs = join(root, 'build/authority/');
  const names = ['pebble', 'pebble-challtestsrv'];
  await command('go', ['build', '-o', programs, ...names.map((name) => packages + name)], {
    cwd: root,
  });
  const [directory, management, dns, other] = await freePorts(4);
  const [certificate, key] = await ownCertificate(folder);
  const config = join(folder, 'authority.json');
  await writeFile(
    config,
    JSON.stringify({
      pebble: {
        listenAddress: `127.0.0.1:${directory}`,
        managementListenAddress: `127.0.0.1:${management}`,
        certificate,
        privateKey: key,
        httpPort: http,
        tlsPort: tls,
        retryAfter: { authz: 1, order: 1 },
        keyAlgorithm: 'ecdsa',
        profiles: { default: { description: 'for tests', validityPeriod: seconds } },
      },
    }),
  );
  const off = ['-http01', '', '-https01', '', '-tlsalpn01', '', '-doh', '', '-defaultIPv6', ''];
  const here = [`-dnsserver`, `127.0.0.1:${dns}`, '-management', `127.0.0.1:${other}`];
  const children = [
    spawn(join(programs, names[1]), [...here, ...off], { stdio: 'ignore' }),
    spawn(join(programs, names[0]), ['-config', config, '-dnsserver', `127.0.0.1:${dns}`], {
      stdio: 'ignore',
      env: { ...process.env, PEBBLE_VA_NOSLEEP: '1', PEBBLE_WFE_NONCEREJECT: '0' },
    }),
  ];
  const stop = () => children.forEach((child) => child.kill());
  t.after(stop);
  const roots = join(folder, 'roots.pem');
  await writeFile(roots, await rootOf(management, children));
  await namesFound(dns, children);
  const url = `https://localhost:${directory}/dir`;
  return { flags: ['-acme', url, '-acme-ca', certificate], roots, stop };
}

/** A certificate of its own for the authority's directory: [certificate, key], two files. */
async function ownCertificate(folder) {
  const [certificate, key] = ['directory.pem', 'directory-key.pem'].map((n) => join(folder, n));
  const how = ['-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-256', '-nodes'];
  const what = ['-days', '2', '-subj', '/CN=localhost', '-addext', 'subjectAltName=DNS:localhost'];
  const where = ['-keyout', key, '-out', certificate];
  await command(process.env.OPENSSL ?? 'openssl', ['req', ...how, ...what, ...where]);
  return [certificate, key];
}

/** Resolves as soon as the name server finds names: the authority asks it only once. */
async function namesFound(port, children) {
  const server = new Resolver({ timeout: 100, tries: 1 });
  server.setServers([`127.0.0.1:${port}`]);
  for (;;) {
    if (children.some((child) => child.exitCode !== null)) throw new Error('no name server');
    const found = await server.resolve4('workshop.example').catch(() => []);
    if (found.length > 0) return;
    await pause(50);
  }
}

/** The authority's root certificate, as soon as it gives it. */
async function rootOf(port, children) {
  for (;;) {
    if (children.some((child) => child.exitCode !== null)) throw new Error('no authority');
    try {
      return await read(`https://localhost:${port}/roots/0`);
    } catch (error) {
      if (error.code !== 'ECONNREFUSED') throw error;
      await pause(50);
    }
  }
}

function read(url) {
  return new Promise((resolve, reject) => {
    const asked = request(url, { rejectUnauthorized: false, family: 4 }, async (answer) => {
      let text = '';
      for await (const part of answer.setEncoding('utf8')) text += part;
      resolve(text);
    });
    asked.on('error', reject).end();
  });
}
