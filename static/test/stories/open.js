// Opens a story live, "open.html?story=ID&theme=dark&text=2": puts what it began with
// into the store of this origin, and goes to its address.
import { pasteStore } from './store-copy.js';

const asked = new URLSearchParams(location.search);
const response = await fetch(`made/${asked.get('story')}/story.json`);
const { phone, address, taps, opened, store } = await response.json();

if (store) {
  const { keys, records } = store.lists.settings;
  keys.push('theme');
  records.push(asked.get('theme') ?? 'light');
  await pasteStore(store);
}
sessionStorage.setItem('story', JSON.stringify({ taps, opened, text: asked.get('text') ?? 1 }));
location.replace(`/?phone=${encodeURIComponent(phone)}${address}`);
