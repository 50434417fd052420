// A cause has a title, what happened and what follows; an observation has a sentence.
import assert from "node:assert/strict";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {createWords} from "../../site/js/words.js";
import {causeWords, observationWords} from "../../site/js/views/cause-words.js";

const words = createWords([readFileSync(new URL("../../site/words/causes.ftl", import.meta.url), "utf8")]);

test("a cause is told in four parts", () => {
  assert.deepEqual(causeWords(words, "strainer-blocked"), {
    title: "Strainer blocked",
    happened: "The strainer in the suction line is blocked.",
    follows: "Both gauges fall; throttling the discharge cannot clean it, and never throttle the suction.",
    size: "Share of its open area that is stopped up",
  });
});

test("an observation is told in a sentence", () => {
  assert.equal(observationWords(words, "pumps-counted"), "Look which pumps run.");
});
