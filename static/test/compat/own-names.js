// What in the page's scripts is its own, though browsers have a newer thing of that name.

/** Classes of which the page has no instance, as long as it has none of the names `by` which one comes by them. */
export const strangers = [
  { classes: /^RTC/, by: ['RTCPeerConnection', 'webkitRTCPeerConnection'] },
  { classes: /^XR/, by: ['xr'] },
  { classes: /^MIDI/, by: ['requestMIDIAccess'] },
  { classes: /^(Serial|HID|USB|Bluetooth)/, by: ['serial', 'hid', 'usb', 'bluetooth'] },
  { classes: /^Gamepad/, by: ['getGamepads', 'ongamepadconnected'] },
  {
    classes: /^FileSystem/,
    by: ['getDirectory', 'webkitGetAsEntry', 'getAsFileSystemHandle', 'showOpenFilePicker', 'showSaveFilePicker', 'showDirectoryPicker', 'requestFileSystem'], // prettier-ignore
  },
  { classes: /^Push/, by: ['pushManager', 'PushManager'] },
  { classes: /^FontFace/, by: ['fonts', 'FontFace'] },
  { classes: /^(OfflineAudioContext)$/, by: ['OfflineAudioContext'] },
  { classes: /^Navigation/, by: ['navigation'] },
  { classes: /^ProcessingInstruction$/, by: ['createProcessingInstruction'] },
  { classes: /^Offscreen/, by: ['OffscreenCanvas', 'transferControlToOffscreen'] },
  { classes: /^CSSKeyframes?Rule$/, by: ['insertRule', 'replaceSync'] },
  { classes: /^WritableStreamDefaultController$/, by: ['WritableStream'] },
  { classes: /^(Tag|Exception)$/, by: ['Tag', 'JSTag', 'Exception'] },
];

/** Names of the page's own things, or of older ones of browsers; what each is there. */
export const ownNames = {
  actions: 'what a problem asks to be done',
  blocking: 'a new edition that another window keeps from opening the store',
  body: 'of an answer, and of a line of a backup',
  bytes: 'how large a photo or a backup is',
  capture: "an option of a listener, in lit-html's",
  content: 'of a template or a <meta>',
  controller: "of a container of service workers, and lit-html's",
  drop: 'takes a draft away',
  filter: 'of a list',
  host: "an option of lit-html's templates",
  index: 'which of several, and that of a match',
  lang: 'of an element',
  name: 'of whatever has one; no group of <details> is named',
  rel: 'of a <link>',
  replace: 'of a text or of an address',
  restore: 'of a brush, and what a backup does',
  role: 'for which an oil is in the machine',
  search: 'of an address',
  sheet: 'of a <link> of styles',
  size: 'of a Map, a Set or a Blob; addresses are not asked how many they hold',
  source: 'where a figure is from',
  take: 'takes a draft out',
  try: 'an attempt of the page, which may be made again',
  type: 'of whatever has one but a link',
  values: 'of a Map or an object; no stream is gone through',
  variants: 'of a card in two versions',
  when: 'at which time, or under which condition',
};
