// The words of a cause and of what shows it, by their ids in the catalogue of causes.

/**
 * @param {(id: string) => string} words with causes.ftl among them
 * @param {string} id of a cause
 * @returns {{title: string, happened: string, follows: string}}
 */
export const causeWords = (words, id) => ({
  title: words(`cause-${id}.title`),
  happened: words(`cause-${id}`),
  follows: words(`cause-${id}.follows`),
});

/**
 * @param {(id: string) => string} words with causes.ftl among them
 * @param {string} id of an observation
 */
export const observationWords = (words, id) => words(`observation-${id}`);
