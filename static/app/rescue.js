// What is left when a part of the page can't be had: it says so, loads again, and saves
// the records to a file (rescue-file.js, which comes when it is asked for). It stands
// alone, since anything else may be what is missing; its sentences stand in index.html.

const template = /** @type {HTMLTemplateElement} */ (document.getElementById('rescue-parts'));
/** @type {HTMLElement | undefined} */
let section;
let lasting = false;

/**
 * Shows it, with another reason than that a part is missing when there is one.
 *
 * @param {string} [why]
 */
function show(why) {
  if (document.querySelector('#older:not([hidden])')) return; // it is too old, and says so
  section ??= put();
  const reason = section.querySelector('p');
  if (why && reason) reason.textContent = why;
  lasting = Boolean(why);
  section.hidden = false;
}

/** Puts it on the page, before anything else. */
function put() {
  document.body.prepend(template.content);
  const here = /** @type {HTMLElement} */ (document.getElementById('rescue'));
  const [again, keep] = here.querySelectorAll('button');
  again?.addEventListener('click', () => location.reload());
  keep?.addEventListener('click', () => save(keep, here.querySelectorAll('p:nth-of-type(n + 3)')));
  return here;
}

/**
 * Saves the records, and says what came of it: one of the outcomes.
 *
 * @param {HTMLButtonElement} button
 * @param {NodeListOf<HTMLElement>} outcomes
 */
async function save(button, outcomes) {
  button.disabled = true;
  for (const outcome of outcomes) outcome.hidden = true;
  const [at, values] = await import(/** @type {string} */ (button.dataset.src))
    .then((file) => file.save())
    .catch(() => [2, {}]);
  const said = outcomes.item(at);
  said.textContent = (said.dataset.said ??= said.textContent ?? '').replace(
    /\{(\w+)\}/g,
    (_, name) => new Map(Object.entries(values)).get(name) ?? '',
  );
  said.hidden = false;
  button.disabled = false;
}

// A part was missing for the screen before; whether one is missing for the next shows.
addEventListener('hashchange', () => {
  if (section && !lasting) section.hidden = true;
});
// The app tells of a part that it can't have, or of a store that it can't read.
addEventListener('rescue', (event) => {
  event.preventDefault(); // it is taken care of
  show(/** @type {CustomEvent} */ (event).detail);
});
addEventListener(
  'error',
  ({ target }) => {
    if (target instanceof HTMLScriptElement) return show();
    if (target instanceof HTMLLinkElement) return target.rel === 'stylesheet' && show();
    nothingDrawn();
  },
  true,
);
addEventListener('unhandledrejection', ({ reason }) => (reason?.part ? show() : nothingDrawn()));

function nothingDrawn() {
  if (!document.querySelector('#app > *')) show();
}

// A style that is missing was known before this came: its sheet is not there, or empty.
for (const link of document.querySelectorAll('link'))
  if (link.rel === 'stylesheet' && !link.sheet?.cssRules.length) show();

export {}; // a scope of its own for those who read it; the build makes it a script
