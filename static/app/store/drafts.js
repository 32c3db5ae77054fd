// What stands in the fields of jobs and is not kept yet: it outlives their screen.
const contents = new Map();

/** The fields of one job. */
export class Drafts {
  constructor(job) {
    this.key = (id) => `${job} ${id}`;
  }

  /** What stood in the field of that id, or undefined. */
  get(id) {
    return contents.get(this.key(id));
  }

  put(id, content) {
    contents.set(this.key(id), content);
  }

  drop(id) {
    contents.delete(this.key(id));
  }
}
