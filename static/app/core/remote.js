import { unreachable } from './answer.js';

/**
 * Stands in for the core worker in a browser that has no WebAssembly: the same
 * messages in and out, answered by the server.
 *
 * @typedef {{ id: number, op: string, input: string }} Asked
 * @typedef {{ ready?: boolean, failed?: boolean, id?: number, output?: string }} Said
 *
 * @typedef {object} CoreWorker what the page needs of a worker
 * @property {((event: any) => void) | null} onmessage its data is Said
 * @property {((event: any) => void) | null} onerror
 * @property {((event: any) => void) | null} [onmessageerror]
 * @property {(message: Asked) => void} postMessage
 * @property {() => void} terminate
 *
 * @returns {CoreWorker}
 */
export function remoteWorker() {
  const gone = new AbortController();
  /** @type {CoreWorker} */
  const worker = {
    onmessage: null,
    onerror: null,
    terminate: () => gone.abort(),
    async postMessage({ id, op, input }) {
      const output = await fetch(`/api/${encodeURIComponent(op)}`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: input,
        signal: gone.signal,
      })
        .then((response) => response.text())
        .catch(() => JSON.stringify(unreachable));
      if (!gone.signal.aborted) worker.onmessage?.({ data: { id, output } });
    },
  };
  queueMicrotask(() => worker.onmessage?.({ data: { ready: true } }));
  return worker;
}
