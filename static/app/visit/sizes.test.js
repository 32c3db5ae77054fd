// Each size of a label is that of its paper, in the style as in the list.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { sizes } from './sizes.js';

const style = readFileSync(new URL('label.css', import.meta.url), 'utf8');

test('a label is as large as the list says, and so is its paper', () => {
  for (const [id, { wide, high, plain }] of sizes) {
    const [, own = ''] = style.match(new RegExp(`\\[data-size='${id}'\\] \\{([^}]*)\\}`)) ?? [];
    assert.ok(
      own.includes(`width: ${wide}mm`) && own.includes(`height: ${high}mm`),
      `${id}: ${own}`,
    );
    assert.equal(style.includes(`size: ${wide}mm ${high}mm;`), !plain, `the paper of ${id}`);
  }
});
