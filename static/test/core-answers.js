// Answers of a core: `node core-answers.js core.wasm` reads a JSON list of calls,
// each [operation, JSON], and prints the list of answers. The core collects garbage as
// often as can be, which leans on what slimming leaves.
import { text } from 'node:stream/consumers';
import { door } from '../app/core/door.js';
import { programInNode } from './core-in-node.js';

const program = await programInNode(process.argv[2], { GOGC: '1' });
const call = door(program);
const answers = JSON.parse(await text(process.stdin)).map(([op, input]) => {
  const answer = call(op, input);
  program.exports.rest();
  return answer;
});
console.log(JSON.stringify(answers));
