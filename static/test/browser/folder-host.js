// A host that serves an exported site, as a static host would: the files with the
// headers that headers.json names. The folder can be changed while it runs, and the host
// can be gone for a while.
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { join } from 'node:path';

/**
 * Starts the host. In what it returns `missing` holds paths to answer with 404, and
 * `altered` functions that make another body of the one of a path; after `stop` nobody
 * answers at its address until `start`.
 */
export async function startFolderHost(t, folder) {
  const host = { folder, missing: new Set(), altered: new Map() };
  const server = createServer(async (request, response) => {
    const { pathname } = new URL(request.url, 'http://localhost');
    try {
      if (host.missing.has(pathname)) throw new Error('taken away by the test');
      const headers = JSON.parse(await readFile(join(host.folder, 'headers.json'), 'utf8'));
      const body = await readFile(join(host.folder, pathname === '/' ? 'index.html' : pathname));
      const sent = host.altered.get(pathname)?.(body) ?? body;
      response.writeHead(200, headers[pathname]).end(sent);
    } catch {
      response.writeHead(404).end();
    }
  });
  const listen = (port) => new Promise((resolve) => server.listen(port, 'localhost', resolve));
  await listen(0);
  const { port } = server.address();
  host.url = `http://localhost:${port}/`;
  host.stop = () => new Promise((resolve) => (server.close(resolve), server.closeAllConnections()));
  host.start = () => listen(port);
  t.after(host.stop);
  return host;
}
