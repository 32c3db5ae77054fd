/**
 * Stands in for the core worker in a browser that has no WebAssembly: the same
 * messages in and out, answered by the server.
 */
export function remoteWorker() {
  const gone = new AbortController();
  const worker = {
    onmessage: null,
    onerror: null,
    terminate: () => gone.abort(),
    async postMessage({ id, op, input }) {
      try {
        const response = await fetch(`/api/${encodeURIComponent(op)}`, {
          method: 'POST',
          headers: { 'Content-Type': 'application/json' },
          body: input,
          signal: gone.signal,
        });
        worker.onmessage?.({ data: { id, output: await response.text() } });
      } catch (error) {
        if (!gone.signal.aborted) worker.onerror?.(error);
      }
    },
  };
  queueMicrotask(() => worker.onmessage?.({ data: { ready: true } }));
  return worker;
}
