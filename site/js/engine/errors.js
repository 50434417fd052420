// What can go wrong between the page and its Python.

/** A failure with a code the page can act on; the page words it, `text` is for developers. */
export class EngineError extends Error {
  /**
   * @param {object} error as it stands in a reply: code, text, where, got, rule, facts, hint, file, detail
   */
  constructor({code = "bug", text = "", where = "", got = null, rule = "", facts = {}, hint = "", file = "", detail = ""} = {}) {
    super(text || code);
    this.name = "EngineError";
    Object.assign(this, {code, text, where, got, rule, facts: facts ?? {}, hint, file, detail});
  }
}

/** A newer ask on the same channel took this one's place before it was sent. */
export class Superseded extends Error {
  constructor() {
    super("superseded by a newer ask");
    this.name = "Superseded";
  }
}
