// What the engine is at: starting (with honest progress), failed (try again), troubled, or silent.
import {h, hide, setText} from "./dom.js";
import {sentence} from "./sentence.js";

export function create(host, {document, words, send}) {
  const make = (...parts) => h(document, ...parts);
  const text = make("span", {role: "status"});
  const bar = make("progress", {max: 1, "aria-label": words("boot-progress"), hidden: true});
  const again = make("button", {type: "button", hidden: true, onclick: () => send({type: "again"})}, words("boot-again"));
  const reload = make("button", {type: "button", hidden: true, onclick: () => send({type: "reload"})}, words("reload"));
  const copy = make("button", {type: "button", class: "plain", hidden: true, onclick: () => send({type: "copy-details"})}, words("copy-details"));
  const box = make("div", {class: "status"}, text, bar, again, reload, copy);
  host.append(box);

  return {
    update({boot, trouble: broken, linkTrouble, late = false, saved}, units) {
      const trouble = broken ?? linkTrouble;
      const said = boot.stage === "ready" ? null : bootLine(boot, words);
      setText(text, said ?? (late ? words("computing") : trouble ? troubleLine(trouble, {words, units}) : words(saved ? "live" : "live-not-kept")));
      box.classList.toggle("trouble", boot.stage === "failed" || (!said && !late && Boolean(trouble)));
      const {done, total} = boot;
      hide(bar, !said || boot.stage === "failed");
      if (total > 0) bar.value = Math.min(1, done / total);
      else bar.removeAttribute("value");
      hide(again, boot.stage !== "failed");
      hide(reload, boot.stage !== "failed" && trouble?.code !== "stale");
      hide(copy, !(boot.stage === "failed" || trouble?.code === "bug"));
    },
  };
}

/** One line on what went wrong. No DOM. */
export function troubleLine(trouble, {words, units}) {
  if (words.has(`trouble-${trouble.code}`)) return words(`trouble-${trouble.code}`);
  return trouble.rule ? words("trouble-plant", {what: sentence(trouble, {words, units})}) : words("trouble-bug");
}

/** One line on the start: stage and megabytes. No DOM. */
export function bootLine({stage, done, total, again}, words) {
  if (stage === "failed") return words("boot-failed");
  const line = again ? words("boot-restart") : words(`boot-stage-${stage === "packages" ? stage : "runtime"}`);
  if (!(total > 0) || done >= total) return line;
  return `${line} ${words("boot-bytes", {done: megabytes(done), total: megabytes(total)})}`;
}

const megabytes = (bytes) => (bytes / 1e6).toFixed(1);
