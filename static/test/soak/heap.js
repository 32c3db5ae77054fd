// What a page or a worker holds in memory once all that nobody can reach was collected.

const collections = 3; // what one finalizes is free only after the next

/**
 * What a program makes while it runs. The other types are the browser's: code and shapes
 * of objects, which grow with what has ever run and end with the program, and its own.
 */
const made = new Set([
  'object',
  'closure',
  'array',
  'regexp',
  'symbol',
  'bigint',
  'string',
  'concatenated string',
  'sliced string',
]);

/** Collects; resolves to what is left: `usedSize`, `embedderHeapUsedSize`, in bytes. */
export async function collected(devtools) {
  for (let n = 0; n < collections; n++) await devtools.send('HeapProfiler.collectGarbage');
  return devtools.send('Runtime.getHeapUsage');
}

/** Bytes of what the programs of the page made, by a snapshot of its heap. */
export async function madeIn(devtools) {
  const parts = [];
  const keep = ({ chunk }) => parts.push(chunk);
  devtools.on('HeapProfiler.addHeapSnapshotChunk', keep);
  await devtools.send('HeapProfiler.takeHeapSnapshot', { reportProgress: false });
  devtools.off('HeapProfiler.addHeapSnapshotChunk', keep);
  const { snapshot, nodes } = JSON.parse(parts.join(''));
  const { node_fields: fields, node_types: types } = snapshot.meta;
  const [type, size] = [fields.indexOf('type'), fields.indexOf('self_size')];
  let sum = 0;
  for (let at = 0; at < nodes.length; at += fields.length)
    if (made.has(types[type][nodes[at + type]])) sum += nodes[at + size];
  return sum;
}

/** Bytes of the memories of all WebAssembly programs there. */
export async function programsIn(devtools) {
  const objectGroup = 'programs';
  const { result } = await devtools.send('Runtime.evaluate', {
    expression: 'WebAssembly.Memory.prototype',
    objectGroup,
  });
  const { objects } = await devtools.send('Runtime.queryObjects', {
    prototypeObjectId: result.objectId,
    objectGroup,
  });
  const sum = await devtools.send('Runtime.callFunctionOn', {
    objectId: objects.objectId,
    functionDeclaration:
      'function () { return this.reduce((sum, { buffer }) => sum + buffer.byteLength, 0); }',
    returnByValue: true,
  });
  await devtools.send('Runtime.releaseObjectGroup', { objectGroup });
  return sum.result.value;
}
