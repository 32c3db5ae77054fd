// Runs in the page of a story, before it: notes what is tapped, filled in and chosen
// since the address last changed, and does the same again where a story is opened live.
{
  const patience = 10_000; // ms until a thing that was tapped should be there again
  const fields = 'input:not([type=checkbox], [type=radio], [type=file]), select, textarea';
  const settled = (text) => text.replace(/\d+/g, '').trim(); // clocks go on
  let taps = [];
  let label = null; // tapped just now: its field gets a click of its own

  // Not by its place among all the rest: what comes later moves that.
  const alike = (tag, text) => [...document.querySelectorAll(tag)].filter((e) => said(e) === text);
  const said = (element) => {
    const speaking = element.matches(fields) ? element.labels?.[0] : element;
    return settled(speaking?.textContent ?? element.name ?? '');
  };
  const mark = (element) => {
    const [tag, text] = [element.tagName, said(element)];
    return { tag, text, nth: alike(tag, text).indexOf(element) };
  };
  const note = (element, what) => taps.push({ ...mark(element), ...what });

  addEventListener('hashchange', () => (taps = []));

  addEventListener(
    'click',
    ({ target }) => {
      const thing = target.closest('a, button, summary, label, input, select, textarea');
      if (!thing || thing.matches(fields) || thing === label?.control) return;
      label = thing.matches('label') ? thing : null;
      if (label?.control?.matches(`${fields}, [type=file]`)) return;
      note(thing, { act: 'tap' });
    },
    true,
  );

  const filled = ({ target }) => {
    if (target.matches('[type=file]')) return chosen(target);
    if (!target.matches(fields)) return;
    const last = taps.at(-1);
    const { tag, text, nth } = mark(target);
    const again =
      last?.act === 'fill' && last.tag === tag && last.text === text && last.nth === nth;
    if (again) last.value = target.value;
    else note(target, { act: 'fill', value: target.value });
  };
  addEventListener('input', filled, true);
  addEventListener('change', filled, true);

  const asURL = (file) =>
    new Promise((resolve) => {
      const reader = new FileReader();
      reader.onload = () => resolve({ name: file.name, url: reader.result });
      reader.readAsDataURL(file);
    });
  const chosen = (input) => note(input, { act: 'choose', files: [...input.files].map(asURL) });

  const details = () => [...document.querySelectorAll('details')];

  /** What brings a page to where this one is: {address, taps, opened}. */
  const taken = async () => ({
    address: location.hash,
    taps: await Promise.all(
      taps.map(async (tap) => ({ ...tap, files: await Promise.all(tap.files ?? []) })),
    ),
    opened: details().map(({ open }) => open),
  });

  const until = async (find) => {
    for (const end = Date.now() + patience; Date.now() < end;) {
      const found = find();
      if (found) return found;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    throw new Error('lost');
  };
  const there =
    ({ tag, text, nth }) =>
    () =>
      alike(tag, text)[nth];
  const changed = (element) => {
    for (const type of ['input', 'change'])
      element.dispatchEvent(new Event(type, { bubbles: true }));
  };
  const acts = {
    tap: (element) => element.click(),
    fill(element, { value }) {
      element.value = value;
      changed(element);
    },
    async choose(element, { files }) {
      const list = new DataTransfer();
      for (const { name, url } of files)
        list.items.add(new File([bytesOf(url)], name, { type: url.match(/^data:([^;,]*)/)[1] }));
      element.files = list.files;
      element.dispatchEvent(new Event('change', { bubbles: true }));
    },
  };
  // The page's policy lets nothing be fetched from such a URL.
  const bytesOf = (url) =>
    Uint8Array.from(atob(url.slice(url.indexOf(',') + 1)), (letter) => letter.charCodeAt(0));

  /** Goes the way again; <html data-story> says whether it came to the end: here or lost. */
  const go = async ({ taps: list, opened, text }) => {
    const root = document.documentElement;
    if (text > 1) root.style.fontSize = `${text * parseFloat(getComputedStyle(root).fontSize)}px`;
    try {
      await until(() => document.querySelector('h1'));
      for (const tap of list) await acts[tap.act](await until(there(tap)), tap);
      await until(() => details().length === opened.length);
      details().forEach((element, n) => (element.open = opened[n]));
      root.dataset.story = 'here';
    } catch {
      root.dataset.story = 'lost';
    }
  };

  globalThis.story = { taken };
  const way = sessionStorage.getItem('story');
  sessionStorage.removeItem('story');
  if (way) addEventListener('DOMContentLoaded', () => go(JSON.parse(way)));
}
