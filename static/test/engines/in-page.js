// What the drivers ask of a page. Each function runs in it by its text alone, so it
// names nothing from outside, and speaks no younger a language than the oldest engine.

/** What stands on the screen, with plain spaces, and without the marks that keep a value's own direction. */
export const textSeen = () =>
  document.body ? document.body.innerText.replace(/\s+/g, ' ').replace(/[\u2066-\u2069]/g, '') : '';

/**
 * Looks for the thing that is meant, brings it to the middle of the screen, and says
 * where a finger hits it: {x, y}, or {lacks}, a sentence. `globalThis.finger` says from
 * then on what the next click met. `what` is a selector, or
 * {role, name}: without a role anything that can be tapped and is called so, else the
 * innermost thing that holds the text.
 */
export function place(what) {
  const plain = (text) =>
    text
      .replace(/\s+/g, ' ')
      .replace(/[\u2066-\u2069]/g, '')
      .trim();
  const roles = {
    button: 'button, [role=button], input[type=button], input[type=submit]',
    link: 'a[href]',
    radio: 'input[type=radio], [role=radio]',
    checkbox: 'input[type=checkbox], [role=checkbox]',
    textbox: 'input:not([type=radio]):not([type=checkbox]):not([type=file]), textarea',
    combobox: 'select',
    slider: 'input[type=range]',
    summary: 'summary',
    tab: '[role=tab]',
  };
  const shown = (element) => {
    const { width, height } = element.getBoundingClientRect();
    return width > 0 && height > 0 && getComputedStyle(element).visibility === 'visible';
  };
  const read = (element) => {
    const copy = element.cloneNode(true);
    for (const hidden of copy.querySelectorAll('[aria-hidden=true], script, style'))
      hidden.remove();
    return plain(copy.textContent);
  };
  const called = (element) => {
    const by = element.getAttribute('aria-labelledby');
    if (by) {
      const labels = by.split(/\s+/).map((id) => document.getElementById(id));
      return plain(labels.map((label) => (label ? label.textContent : '')).join(' '));
    }
    const own = element.getAttribute('aria-label');
    if (own) return plain(own);
    if (element.labels && element.labels.length) return [...element.labels].map(read).join(' ');
    return read(element) || plain(element.value || element.alt || element.title || '');
  };
  const all = (selector) => [...document.querySelectorAll(selector)];
  const innermost = (text) =>
    all('body *').filter(
      (element) =>
        plain(element.textContent).includes(text) &&
        ![...element.children].some((child) => plain(child.textContent).includes(text)),
    );
  const found = () => {
    if (typeof what === 'string') return all(what);
    const name = plain(what.name);
    const named = (selector) => all(selector).filter((element) => called(element) === name);
    if (what.role) return named(roles[what.role] || `[role=${what.role}]`);
    const whole = named(Object.values(roles).join(', '));
    return whole.length ? whole : innermost(name);
  };
  // A tick that is drawn by its label is hit there.
  const target = (element) =>
    !shown(element) && element.labels && element.labels.length ? element.labels[0] : element;

  const meant = found();
  if (!meant.length) return { lacks: 'there is none' };
  const visible = meant.map(target).filter(shown);
  if (!visible.length) return { lacks: 'it is hidden' };
  const element = visible.find((one) => !one.disabled);
  if (!element) return { lacks: 'it is disabled' };
  element.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });
  // A link that wraps has several boxes, with nothing of it between them.
  const box = element.getClientRects()[0];
  const x = box.left + box.width / 2;
  const y = box.top + box.height / 2;
  const hit = document.elementFromPoint(x, y);
  if (!hit) return { lacks: `it is beyond the screen, at ${x}, ${y}` };
  const whole = (part) => part.closest('a, button, label, summary');
  const meets = (other) => {
    const label = other.closest('label');
    const within = other.contains(element) && whole(other) && whole(other) === whole(element);
    return element.contains(other) || within || (label && label.control === element);
  };
  if (!meets(hit)) return { lacks: `${hit.outerHTML.slice(0, 120)} covers it` };
  const finger = {};
  globalThis.finger = finger;
  const see = ({ target }) => (finger.met = Boolean(meets(target)));
  addEventListener('click', see, { capture: true, once: true });
  return { x, y };
}

/** Whether the click after place() met what was meant; nothing while there was none. */
export const fingerMet = () => (globalThis.finger ? globalThis.finger.met : true);

/** Marks the field whose label begins with the text, with the focus; says whether there is one. */
export function focusField(label) {
  const plain = (text) => text.replace(/\s+/g, ' ').trim();
  const begins = (text) => plain(text || '').startsWith(label);
  const field = [...document.querySelectorAll('input, textarea')].find(
    (element) =>
      begins(element.getAttribute('aria-label')) ||
      [...(element.labels || [])].some((one) => begins(one.textContent)),
  );
  if (!field || field.disabled) return false;
  field.scrollIntoView({ block: 'center', behavior: 'instant' });
  field.focus();
  field.select();
  return document.activeElement === field;
}

/**
 * Chooses an entry of a list by the words of both; says whether it is there. The list
 * that drops down is the system's own, which no driver reaches in every engine.
 */
export function chooseEntry(label, entry) {
  const plain = (text) => text.replace(/\s+/g, ' ').trim();
  const list = [...document.querySelectorAll('select')].find((element) =>
    [...element.labels].some((one) => plain(one.textContent) === label),
  );
  const option = list && [...list.options].find((one) => plain(one.textContent) === entry);
  if (!option) return false;
  list.value = option.value;
  list.dispatchEvent(new Event('input', { bubbles: true }));
  list.dispatchEvent(new Event('change', { bubbles: true }));
  return true;
}

/** Brings a thing to the middle of the screen and says where its box is, if it is there. */
export function boxOf(selector) {
  const element = document.querySelector(selector);
  if (!element) return undefined;
  element.scrollIntoView({ block: 'center', behavior: 'instant' });
  const { left, top, width, height } = element.getBoundingClientRect();
  return width && height ? { left, top, width, height } : undefined;
}
