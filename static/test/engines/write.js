/** Runs in the page: opens what a field is folded away in; says whether it is there. */
const uncover = (selector) => {
  const field = document.querySelector(selector);
  for (let up = field; up; up = up.parentElement) if (up.tagName === 'DETAILS') up.open = true;
  return field !== null;
};

/** Writes into the field with real keys, in place of what it held. */
export async function write(engine, selector, text) {
  await engine.until(uncover, selector);
  await engine.tap(selector);
  await engine.evaluate((s) => document.querySelector(s).select(), selector);
  await engine.strike([...text]);
}
