// The server's program beside nginx, which serves the same compressed files with the
// same headers. Everything stays on this machine, and ends after a fixed time.
import { execFile, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { get } from 'node:http';
import { connect } from 'node:net';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { freePorts } from './browser/authority.js';
import { run } from './browser/launch.js';
import { median } from './median.js';

const command = promisify(execFile);
const program = fileURLToPath(new URL('../../build/tidysump', import.meta.url));

// Where nginx has no module for files that brotli compressed, both send gzip.
const brotliModule = '/usr/lib/nginx/modules/ngx_http_brotli_static_module.so';
const encoding = existsSync(brotliModule) ? 'br' : 'gzip';

const rounds = 5;
const seconds = 2; // of each round
const callers = 32; // at once
const phones = 1000; // slow ones
const phoneRate = 64_000; // bytes a second that each takes

/** Calls `work` with a folder that has the exported site in `site`. */
async function withSite(work) {
  const folder = await mkdtemp(join(tmpdir(), 'tidysump-'));
  try {
    await run('tidysump', '-export', join(folder, 'site'));
    return await work(folder);
  } finally {
    await rm(folder, { recursive: true });
  }
}

const servers = [
  { name: 'tidysump', start: startProgram },
  { name: 'nginx', start: startNginx },
];

/** The list of cores from one to another, as taskset takes it. */
const coreList = (from, to) => `${from}-${to - 1}`;

/** Starts this program on so many cores: {url, stop}. */
async function startProgram(folder, cores) {
  const args = ['-c', coreList(0, cores), program, '-addr', '127.0.0.1:0'];
  const child = spawn('taskset', args, { cwd: folder, stdio: ['ignore', 'pipe', 'inherit'] });
  const line = await new Promise((resolve) => createInterface(child.stdout).once('line', resolve));
  return { url: line.match(/http:\S+/)[0].replace('localhost', '127.0.0.1'), ...ending(child) };
}

/** Starts nginx on so many cores, set up to serve the files as fast as it can. */
async function startNginx(folder, cores) {
  const [port] = await freePorts(1);
  const headers = JSON.parse(await readFile(join(folder, 'site/headers.json'), 'utf8'))['/'];
  const sent = Object.entries(headers).filter(([name]) => name !== 'Content-Type'); // its own
  const config = `
    ${encoding === 'br' ? `load_module ${brotliModule};` : ''}
    ${process.getuid() === 0 ? 'user root;' : ''}
    worker_processes ${cores};
    worker_rlimit_nofile 8192;
    daemon off;
    pid ${folder}/nginx.pid;
    error_log stderr error;
    events { worker_connections 4096; }
    http {
      types { application/wasm wasm; text/html html; }
      access_log off;
      sendfile on;
      tcp_nopush on;
      keepalive_requests 1000000;
      open_file_cache max=1000;
      ${encoding === 'br' ? 'brotli_static on;' : 'gzip_static on;'}
      ${['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'].map((name) => `${name}_temp_path ${folder}/nginx;`).join('\n')}
      server {
        listen 127.0.0.1:${port} backlog=4096;
        root ${folder}/site;
        ${sent.map(([name, value]) => `add_header ${name} "${value}";`).join('\n')}
      }
    }`;
  await mkdir(join(folder, 'nginx'), { recursive: true });
  await writeFile(join(folder, 'nginx.conf'), config);
  const nginx = process.env.NGINX_PATH ?? 'nginx';
  const args = ['-c', coreList(0, cores), nginx, '-p', folder, '-c', join(folder, 'nginx.conf')];
  const child = spawn('taskset', args, { stdio: ['ignore', 'inherit', 'inherit'] });
  const url = `http://127.0.0.1:${port}`;
  while (!(await fetch(url).catch(() => null))) {
    if (child.exitCode !== null) throw new Error('nginx did not start');
    await pause(20);
  }
  return { url, ...ending(child) };
}

/** {pid, stop} of a child; `stop` resolves when it has ended. */
function ending(child) {
  const exited = new Promise((resolve) => child.on('exit', resolve));
  return { pid: child.pid, stop: () => (child.kill('SIGTERM'), exited) };
}

/** The body of a path as it comes over the line, compressed. */
const sentBody = (url) =>
  new Promise((resolve, reject) => {
    get(url, { headers: { 'accept-encoding': encoding } }, async (answer) => {
      const parts = [];
      for await (const part of answer) parts.push(part);
      if (answer.statusCode !== 200 || answer.headers['content-encoding'] !== encoding)
        reject(new Error(`${url}: ${answer.statusCode} ${answer.headers['content-encoding']}`));
      resolve(Buffer.concat(parts));
    }).on('error', reject);
  });

/** The paths that are asked for: the first page and the core. */
async function paths(folder) {
  const headers = JSON.parse(await readFile(join(folder, 'site/headers.json'), 'utf8'));
  const core = Object.keys(headers).find((path) => path.endsWith('.wasm'));
  return { 'first page': '/', core };
}

/** {rate, p99, count} of a load by all cores that the server leaves. */
async function load(url, cores, { connections = callers, time = seconds } = {}) {
  const all = availableParallelism();
  const on = cores < all ? coreList(cores, all) : coreList(0, all);
  const how = ['-t1', `-c${connections}`, `-d${time}s`, '--latency'];
  const wrk = ['-c', on, process.env.WRK ?? 'wrk', ...how, '-H', `Accept-Encoding: ${encoding}`];
  const { stdout } = await command('taskset', [...wrk, url]);
  if (/(connect|read|write) [1-9]|Non-2xx/.test(stdout)) throw new Error(stdout);
  const [, value, unit] = stdout.match(/99%\s+([\d.]+)(us|ms|s)/);
  const p99 = Number(value) * { us: 1e-3, ms: 1, s: 1e3 }[unit];
  const number = (pattern) => Number(stdout.match(pattern)[1]);
  return { rate: number(/Requests\/sec:\s+([\d.]+)/), count: number(/(\d+) requests in/), p99 };
}

/** What a process and its children hold of the memory, in MB; shared pages count in parts. */
async function memory(pid) {
  const own = await readFile(`/proc/${pid}/smaps_rollup`, 'utf8');
  const below = await Promise.all((await childrenOf(pid)).map(memory));
  return Number(own.match(/^Pss:\s+(\d+)/m)[1]) / 1000 + below.reduce((a, b) => a + b, 0);
}

/** CPU seconds that a process and its children have used. */
async function cpu(pid) {
  const own = (await readFile(`/proc/${pid}/stat`, 'utf8')).split(') ')[1].split(' ');
  const below = await Promise.all((await childrenOf(pid)).map(cpu));
  return (Number(own[11]) + Number(own[12])) / 100 + below.reduce((a, b) => a + b, 0);
}

async function childrenOf(pid) {
  const list = await readFile(`/proc/${pid}/task/${pid}/children`, 'utf8');
  return list.split(' ').filter(Boolean);
}

/**
 * [{cores, what, tidysump: {rate, p99, cost, memory}, nginx: {…}}]: requests a
 * second, the 99th percentile of the answer in ms, CPU in µs a request, memory in MB.
 * The two take turns, so that what else this machine does strikes both.
 */
export function serverRates() {
  return withSite(async (folder) => {
    const rows = [];
    for (const cores of [1, 2].filter((count) => count <= availableParallelism())) {
      for (const [what, path] of Object.entries(await paths(folder))) {
        rows.push({ cores, what, ...(await compare(folder, cores, path)) });
      }
    }
    return rows;
  });
}

async function compare(folder, cores, path) {
  const running = [];
  for (const { name, start } of servers) {
    const server = await start(folder, cores);
    running.push({ name, ...server, body: await sentBody(server.url + path), taken: [] });
  }
  if (!running[0].body.equals(running[1].body)) throw new Error(`${path}: not the same bytes`);
  for (let i = 0; i < rounds; i++) {
    for (const { url, pid, taken } of running) {
      const before = await cpu(pid);
      const { rate, p99, count } = await load(url + path, cores);
      taken.push({ rate, p99, cost: (((await cpu(pid)) - before) / count) * 1e6 });
    }
  }
  const results = {};
  for (const { name, pid, stop, taken } of running) {
    const middle = (key) => median(taken.map((round) => round[key]));
    const [rate, p99, cost] = ['rate', 'p99', 'cost'].map(middle);
    results[name] = { rate, p99, cost, memory: await memory(pid) };
    await stop();
  }
  return results;
}

/**
 * While 1,000 slow phones load the core: [{name, whole, last, memory, p99}], how many
 * got it whole, after how many seconds the last of them, the most memory in MB, and
 * what one fast caller waits for the first page, in ms.
 */
export function slowPhones() {
  return withSite(async (folder) => {
    const { core } = await paths(folder);
    const rows = [];
    for (const { name, start } of servers) {
      const server = await start(folder, 1);
      const size = (await sentBody(server.url + core)).length;
      let most = 0;
      const watch = setInterval(async () => (most = Math.max(most, await memory(server.pid))), 500);
      const started = performance.now();
      const all = Promise.all(Array.from({ length: phones }, () => slowly(server.url, core, size)));
      const fast = await load(`${server.url}/`, 1, { connections: 1, time: 8 });
      const whole = (await all).filter(Boolean).length;
      const last = (performance.now() - started) / 1000;
      clearInterval(watch);
      await server.stop();
      rows.push({ name, whole, last, memory: most, p99: fast.p99 });
    }
    return rows;
  });
}

/** Takes a path slowly; resolves to whether it came whole, in four times the time it needs. */
function slowly(url, path, size) {
  const { hostname, port } = new URL(url);
  return new Promise((resolve) => {
    let bytes = 0;
    let text = '';
    const line = connect(Number(port), hostname, () => {
      line.write(`GET ${path} HTTP/1.1\r\nHost: ${hostname}\r\nAccept-Encoding: ${encoding}\r\n`);
      line.write('Connection: close\r\n\r\n');
    });
    const limit = setTimeout(() => line.destroy(), ((4 * size) / phoneRate) * 1000);
    line.on('data', (part) => {
      if (bytes === 0) text = part.toString('latin1');
      bytes += part.length;
      line.pause();
      setTimeout(() => line.resume(), (part.length / phoneRate) * 1000);
    });
    line.on('error', () => {});
    line.on('close', () => {
      clearTimeout(limit);
      resolve(bytes === size + text.indexOf('\r\n\r\n') + 4);
    });
  });
}

/** Median of the ms from the program's start to its first answer, in an empty folder. */
export async function firstAnswer(start = startProgram) {
  const folder = await mkdtemp(join(tmpdir(), 'tidysump-'));
  const times = [];
  for (let i = 0; i < 9; i++) {
    const started = performance.now();
    const server = await start(folder, availableParallelism());
    await sentBody(`${server.url}/`);
    times.push(performance.now() - started);
    await server.stop();
  }
  await rm(folder, { recursive: true });
  return median(times);
}
