// Which features of the data a WebAssembly program is made of: a validator is given only
// those that all promised browsers have, and where it refuses, the others one by one.
import wabt from 'wabt';
import { lookUp } from './support.js';

/** The validator's names of features, with the data's. */
const features = {
  bulk_memory: 'bulk-memory-operations',
  exceptions: 'exceptionsFinal',
  extended_const: 'extended-constant-expressions',
  function_references: 'typedFunctionReferences',
  gc: 'garbage-collection',
  memory64: 'memory64',
  multi_memory: 'multiMemory',
  multi_value: 'multi-value',
  mutable_globals: undefined, // as old as programs whose globals others see
  reference_types: 'reference-types',
  relaxed_simd: 'relaxed-SIMD',
  sat_float_to_int: 'non-trapping-float-to-int-conversions',
  sign_extension: 'sign-extension-operations',
  simd: 'fixed-width-SIMD',
  tail_call: 'tail-calls',
  threads: 'threads-and-atomics',
};

/** Reports what a program needs. */
export async function checkWasm(report, name, bytes) {
  const { readWasm } = await wabt();
  /** Why the program is none with these features only; '' if it is. */
  const refused = (on) => {
    let program;
    try {
      const set = Object.keys(features).map((one) => [one, on.includes(one)]);
      program = readWasm(bytes, { ...Object.fromEntries(set), readDebugNames: false });
      program.validate();
      return '';
    } catch (error) {
      return error.message;
    } finally {
      program?.destroy();
    }
  };
  const way = (one) => ['webassembly', features[one]];
  const all = Object.keys(features);
  for (const one of all)
    if (features[one] && !lookUp(way(one)))
      report.odd(`WebAssembly: ${features[one]}`, 'the table of features');
  const old = all.filter((one) => !features[one] || !report.lacks(way(one)));
  if (!refused(old)) return;
  const why = refused(all);
  if (why) return report.odd(`WebAssembly: ${why}`, name);
  for (const one of all)
    if (!old.includes(one) && refused(all.filter((other) => other !== one)))
      report.use(way(one), name);
}
