import { files } from './files.js';

let sheet;

/** Puts the style of the screens after the first on the page, once; fails so that it can be tried again. */
export function loadLaterStyle() {
  sheet ??= new Promise((resolve, reject) => {
    const link = document.createElement('link');
    link.rel = 'stylesheet';
    link.href = files['app/screens.css'];
    link.onload = resolve;
    link.onerror = () => {
      link.remove();
      sheet = undefined;
      reject(new Error('style'));
    };
    document.head.append(link);
  });
  return sheet;
}
