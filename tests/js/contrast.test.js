// Every text and every line that matters stands out from its ground, in light and in dark.
import assert from "node:assert/strict";
import {readFileSync, readdirSync} from "node:fs";
import {test} from "node:test";

const STYLES = new URL("../../site/styles/", import.meta.url).pathname;
const base = readFileSync(`${STYLES}base.css`, "utf8");

/** The colours of a theme, by the names of their custom properties. */
function colours(selector) {
  const block = base.slice(base.indexOf(selector)).match(/\{([^}]*)\}/)[1];
  return Object.fromEntries([...block.matchAll(/--([\w-]+): (#[0-9a-f]{6})/g)].map(([, name, hex]) => [name, hex]));
}

const light = colours(":root {");
const THEMES = {light, dark: {...light, ...colours(':root[data-theme="dark"]')}};

/** Relative luminance of an sRGB colour (WCAG 2.2, definition; read). */
function luminance(hex) {
  const [r, g, b] = [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(one, other) {
  const [high, low] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (high + 0.05) / (low + 0.05);
}

// Text colour → the grounds it stands on somewhere.
const TEXTS = {
  "ink": ["sheet", "paper", "liquid", "machine-wash", "load-wash", "warn-wash", "faint"],
  "ink-soft": ["sheet", "paper", "warn-wash"],
  "sheet": ["ink"], // the chosen one of several
  "machine-ink": ["sheet", "paper"],
  "load-ink": ["sheet", "paper"],
  "warn-ink": ["sheet", "paper", "warn-wash"],
};

// Lines and fills that carry meaning → their grounds.
const LINES = {
  "ink": ["sheet", "liquid"],
  "line": ["sheet", "paper"],
  "machine": ["sheet", "machine-wash"],
  "load": ["sheet", "load-wash"],
  "liquid-line": ["sheet", "liquid"],
  "ghost": ["sheet"],
  "focus": ["sheet", "paper"],
  "sheet": ["ink"], // the focus on a chosen word
};

for (const [theme, colour] of Object.entries(THEMES)) {
  for (const [pairs, least, what] of [[TEXTS, 4.5, "text"], [LINES, 3, "line"]]) {
    for (const [name, grounds] of Object.entries(pairs)) {
      test(`${what} in ${name} stands out from ${grounds.join(", ")} in ${theme}`, () => {
        for (const ground of grounds) {
          const found = contrast(colour[name], colour[ground]);
          assert.ok(found >= least, `${name} on ${ground}: ${found.toFixed(2)}`);
        }
      });
    }
  }
}

test("contrast is computed as defined", () => {
  assert.ok(Math.abs(contrast("#000000", "#ffffff") - 21) < 1e-9);
  assert.ok(Math.abs(contrast("#777777", "#ffffff") - 4.48) < 0.005);
});

test("text takes its colour from those that are checked here", () => {
  const files = readdirSync(STYLES).filter((name) => name.endsWith(".css"));
  const used = files.flatMap((name) => [...readFileSync(STYLES + name, "utf8").matchAll(/(?<![-\w])color: var\(--([\w-]+)\)/g)].map(([, colour]) => colour));
  assert.ok(used.length > 10);
  assert.deepEqual([...new Set(used)].filter((name) => !(name in TEXTS)), []);
});

test("colours stand in one place only", () => {
  for (const name of readdirSync(STYLES).filter((file) => file.endsWith(".css") && file !== "base.css")) {
    assert.doesNotMatch(readFileSync(STYLES + name, "utf8"), /#[0-9a-f]{3,8}\b/i, name);
  }
});
