// Every word a person sees stands in site/words, and none stands there for nothing.
import assert from "node:assert/strict";
import {readFileSync, readdirSync} from "node:fs";
import {join} from "node:path";
import {test} from "node:test";
import {createWords} from "../../site/js/words.js";

const SITE = new URL("../../site/", import.meta.url).pathname;

const filesBelow = (folder, ending) =>
  readdirSync(folder, {withFileTypes: true}).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return entry.name === "vendor" ? [] : filesBelow(path, ending);
    return entry.name.endsWith(ending) ? [path] : [];
  });

const sources = filesBelow(join(SITE, "words"), ".ftl").map((path) => readFileSync(path, "utf8"));
const code = filesBelow(join(SITE, "js"), ".js").map((path) => [path, readFileSync(path, "utf8")]);
const html = readFileSync(join(SITE, "index.html"), "utf8");
const ids = sources.flatMap((text) => [...text.matchAll(/^([a-zA-Z][\w-]*) *=/gm)].map(([, id]) => id));

/** Literal ids that code names, and the beginnings of those it puts together. */
function named() {
  const whole = new Map();
  const begun = new Set();
  const calls = /\bwords(?:\.has)?\(\s*(?:`([^`]*)`|"([^"]*)")/g;
  for (const [path, text] of code) {
    for (const [, template, literal] of text.matchAll(calls)) {
      if (literal !== undefined) whole.set(literal, path);
      else if (template.includes("${")) begun.add(template.slice(0, template.indexOf("${")));
      else whole.set(template, path);
    }
  }
  for (const [, id] of html.matchAll(/data-words(?:-\w+)?="([^"]+)"/g)) whole.set(id, "index.html");
  return {whole, begun};
}

test("every message can be read, and no id stands twice", () => {
  createWords(sources);
  assert.equal(new Set(ids).size, ids.length, ids.filter((id, n) => ids.indexOf(id) !== n).join());
});

test("every id that the page names has words", () => {
  const words = createWords(sources);
  const missing = [...named().whole].filter(([id]) => id && !words.has(id.split(".")[0]));
  assert.deepEqual(missing, []);
});

test("every word is used", () => {
  const {whole, begun} = named();
  const everything = code.map(([, text]) => text).join("\n");
  const beginnings = [...begun].filter((start) => start.length > 2);
  const idle = ids.filter(
    (id) => !whole.has(id) && !beginnings.some((start) => id.startsWith(start)) && !everything.includes(`"${id}"`),
  );
  assert.deepEqual(idle, []);
});

test("every beginning that the page puts an id together from has words", () => {
  const lonely = [...named().begun].filter((start) => start && !ids.some((id) => id.startsWith(start)));
  assert.deepEqual(lonely, []);
});

test("the page holds no words of its own", () => {
  const body = html.slice(html.indexOf("<body>")).replace(/<noscript>.*<\/noscript>/s, "");
  const text = body.replace(/<[^>]*>/g, " ").replace(/\s+/g, " ").trim();
  assert.equal(text, "");
  assert.deepEqual([...body.matchAll(/ (?:aria-label|title|alt|placeholder)="/g)], []);
});

test("words take numbers as they come, and a missing one is told", (t) => {
  const words = createWords(["a = { $x } m\nb = x\n    .title = T { $x }"]);
  assert.equal(words("a", {x: "4.2"}), "4.2 m");
  assert.equal(words("b.title", {x: "1"}), "T 1");
  const told = t.mock.method(console, "error", () => {});
  assert.equal(words("nowhere"), "nowhere");
  assert.equal(told.mock.callCount(), 1);
});

test("a damaged file of words is an error", () => {
  assert.throws(() => createWords(["a = 1", "a = 2"]));
});
