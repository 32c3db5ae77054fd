const encoder = new TextEncoder();
const decoder = new TextDecoder();

/**
 * The way into the core's program: call(operation, JSON) -> JSON. It writes both
 * texts into the program's memory and reads the answer there; wasm/main.go has
 * the other side.
 *
 * @param {{ exports: any }} instance of the program
 * @returns {(op: string, input: string) => string}
 */
export function door({ exports: core }) {
  return (op, input) => {
    const [name, text] = [encoder.encode(op), encoder.encode(input)];
    const at = core.room(name.length + text.length) >>> 0;
    const room = new Uint8Array(core.mem.buffer, at, name.length + text.length);
    room.set(name);
    room.set(text, name.length);
    const length = core.call(name.length);
    // The memory may have grown, and lie elsewhere.
    return decoder.decode(new Uint8Array(core.mem.buffer, core.answer() >>> 0, length));
  };
}
