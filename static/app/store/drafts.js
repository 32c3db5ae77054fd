// What stands in the fields of jobs and is not kept yet: it outlives their screen.
/** @type {Map<string, string>} */
const contents = new Map();

/** The fields of one job. */
export class Drafts {
  /** @param {string} job */
  constructor(job) {
    this.key = (/** @type {string} */ id) => `${job} ${id}`;
  }

  /**
   * What stood in the field of that id, or undefined.
   *
   * @param {string} id
   */
  get(id) {
    return contents.get(this.key(id));
  }

  /**
   * @param {string} id
   * @param {string} content
   */
  put(id, content) {
    contents.set(this.key(id), content);
  }

  /** @param {string} id */
  drop(id) {
    contents.delete(this.key(id));
  }
}
