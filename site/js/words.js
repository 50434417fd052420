// Every word a person sees, by its name in words/*.ftl.
import {FluentBundle, FluentResource} from "./vendor/fluent/index.js";

/**
 * @param {string[]} sources texts of the .ftl files
 * @param {string} [locale] of the words
 * @returns {((id: string, args?: object) => string) & {has: (id: string) => boolean, locale: string}}
 */
export function createWords(sources, locale = "en") {
  // useIsolating would put invisible marks round every number
  const bundle = new FluentBundle(locale, {useIsolating: false});
  for (const source of sources) {
    const errors = bundle.addResource(new FluentResource(source));
    if (errors.length) throw errors[0];
  }
  function words(id, args) {
    const [name, attribute] = id.split(".");
    const message = bundle.getMessage(name);
    const pattern = attribute ? message?.attributes[attribute] : message?.value;
    if (!pattern) {
      console.error(`no words for ${id}`);
      return id;
    }
    const problems = [];
    const text = bundle.formatPattern(pattern, args, problems);
    if (problems.length) console.error(`words ${id}: ${problems[0].message}`);
    return text;
  }
  words.has = (id) => {
    const [name, attribute] = id.split(".");
    const message = bundle.getMessage(name);
    return Boolean(attribute ? message?.attributes[attribute] : message?.value);
  };
  words.locale = locale;
  return words;
}

/**
 * Put words into a page: `data-words="key"` fills the text, `data-words-label`
 * and `data-words-title` the attribute of that kind.
 */
export function fillWords(root, words) {
  const attributes = {"data-words-label": "aria-label", "data-words-title": "title"};
  for (const node of root.querySelectorAll("[data-words]")) node.textContent = words(node.dataset.words);
  for (const [from, to] of Object.entries(attributes)) {
    for (const node of root.querySelectorAll(`[${from}]`)) node.setAttribute(to, words(node.getAttribute(from)));
  }
}

/** Read the .ftl files that lie beside the page; a missing one is an error. */
export async function fetchWords(files, locale = "en") {
  const texts = await Promise.all(
    files.map(async (file) => {
      const response = await fetch(file);
      if (!response.ok) throw new Error(`${file}: ${response.status}`);
      return response.text();
    }),
  );
  return createWords(texts, locale);
}
