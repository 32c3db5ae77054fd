// Answers of a core: `node core-answers.js core.wasm` reads a JSON list of calls,
// each [operation, JSON], and prints the list of answers. The core collects garbage as
// often as can be, which leans on what slimming leaves.
import { text } from 'node:stream/consumers';
import { coreInNode } from './core-in-node.js';

const call = await coreInNode(process.argv[2], { GOGC: '1' });
const calls = JSON.parse(await text(process.stdin));
console.log(JSON.stringify(calls.map(([op, input]) => call(op, input))));
