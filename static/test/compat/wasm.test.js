import assert from 'node:assert/strict';
import { test } from 'node:test';
import wabt from 'wabt';
import { sampleReport } from './samples.js';
import { checkWasm } from './wasm.js';

const samples = {
  '(func (result i32) i32.const 1 i32.extend8_s)': [],
  '(func (result i32) f32.const 1 i32.trunc_sat_f32_s)': [],
  '(memory 1) (func i32.const 0 i32.const 0 i32.const 0 memory.fill)': [],
  '(func (result v128) v128.const i32x4 1 2 3 4)': ['fixed-width-SIMD'],
  '(func $a (result i32) return_call $a)': ['tail-calls'],
  '(memory i64 1)': ['memory64'],
  '(tag $a) (func throw $a)': ['exceptionsFinal'],
};

for (const [text, want] of Object.entries(samples))
  test(text, async () => {
    const all = { simd: true, tail_call: true, memory64: true, exceptions: true, threads: true };
    const program = (await wabt()).parseWat('a.wat', `(module ${text})`, all);
    const { buffer } = program.toBinary({});
    program.destroy();
    const report = sampleReport();
    await checkWasm(report, 'a.wasm', buffer);
    assert.deepEqual(
      report.keys(),
      want.map((key) => `webassembly.${key}`),
    );
    assert.deepEqual([...report.unknown.keys()], []);
  });

test('what is no program is told', async () => {
  const report = sampleReport();
  await checkWasm(report, 'a.wasm', new Uint8Array([0, 1, 2, 3]));
  assert.equal(report.unknown.size, 1);
});
