// The words of a cause and of what shows it, by their ids in the catalogue of causes.

/**
 * @param {(id: string) => string} words with causes.ftl among them
 * @param {string} id of a cause
 * @returns {{title: string, happened: string, follows: string, size: string}} `size`: what its number is, empty where it has none
 */
export const causeWords = (words, id) => ({
  title: words(`cause-${id}.title`),
  happened: words(`cause-${id}`),
  follows: words(`cause-${id}.follows`),
  size: words.has(`cause-${id}.size`) ? words(`cause-${id}.size`) : "",
});

/**
 * @param {(id: string) => string} words with causes.ftl among them
 * @param {string} id of an observation
 */
export const observationWords = (words, id) => words(`observation-${id}`);
