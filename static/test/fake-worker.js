/** A worker that answers by `script(message)`: an output, or undefined for silence. */
export class FakeWorker extends EventTarget {
  sent = [];
  terminated = false;
  constructor(script, ready = true) {
    super();
    this.script = script;
    if (ready) queueMicrotask(() => this.emit({ ready: true }));
  }
  emit(data) {
    if (!this.terminated) this.onmessage({ data });
  }
  postMessage(message) {
    this.sent.push(message);
    const data = this.script(message);
    if (data) queueMicrotask(() => this.emit({ id: message.id, ...data }));
  }
  terminate() {
    this.terminated = true;
  }
}
