// The clock's bar over the drawing: run, pause, one step, how fast, what time it is in the plant, and what has just happened.
import {RATES} from "../clock.js";
import {h, hide, icon, setAttributes, setText} from "./dom.js";
import {timeText} from "./plant-time.js";
import {eventText} from "./trend-panel.js";

const TOGETHER = 2; // [s] of plant time: what follows so soon on something belongs to it
const NEWS = 60; // [s] of the watcher's time for which something has just happened
const DRAWN = {run: "M7 4 19 12 7 20Z", pause: "M8 4v16M16 4v16", step: "M5 4 14 12 5 20ZM18 4v16"};

export function create(host, {document, words, send}) {
  const make = (...parts) => h(document, ...parts);
  const icons = {run: icon(document, DRAWN.run), pause: icon(document, DRAWN.pause)};
  const go = make("button", {type: "button", id: "clock-go", onclick: () => send({type: running ? "clock-pause" : "clock-run"})}, icons.run, icons.pause);
  const step = make("button", {type: "button", id: "clock-step", onclick: () => send({type: "clock-step"})}, icon(document, DRAWN.step));
  const inputs = RATES.map((rate) => make("input", {type: "radio", name: "clock-rate", value: rate, onchange: () => send({type: "clock-rate", rate})}));
  const rates = make("fieldset", {class: "choice small"}, make("legend", {class: "unseen"}, words("clock-rates")),
    make("div", {class: "options"}, inputs.map((input, n) => make("label", {}, input, make("span", {}, words("clock-rate", {rate: RATES[n]}))))));
  const time = make("output", {class: "clock-time", "aria-live": "off", "aria-label": words("clock-time")});
  const lags = make("span", {class: "fine", hidden: true}, words("clock-lags"));
  const trend = make("button", {type: "button", class: "plain", id: "clock-trend", onclick: toTrend}, words("clock-trend"));
  let running = false;
  const news = make("p", {class: "clock-news", hidden: true});
  host.append(go, step, rates, time, lags, news, trend);

  function toTrend() {
    document.getElementById("trend").scrollIntoView({block: "start"});
    document.getElementById("trend-title").focus({preventScroll: true});
  }

  return {
    update({clock}) {
      hide(host, clock.status === "off");
      if (clock.status === "off") return;
      running = clock.status === "running";
      hide(icons.run, running);
      hide(icons.pause, !running);
      name(go, words(running ? "clock-pause" : "clock-run"));
      name(step, words("clock-step", {seconds: clock.rate}));
      for (const input of inputs) input.checked = Number(input.value) === clock.rate;
      setText(time, timeText(clock.time, {tenths: clock.rate === 1, days: (count) => words("clock-days", {count})}));
      const told = newsOf(clock, words);
      setText(news, told);
      news.title = told; // a long one is cut short
      hide(news, told === "");
      hide(lags, !clock.lags || told !== "");
    },
  };
}

const name = (node, text) => setAttributes(node, {"aria-label": text, title: text});

/** What happened last, with all that happened with it; nothing once that is a while ago. No DOM. */
export function newsOf({record: {events}, time, rate}, words) {
  const last = events.at(-1);
  if (!last || time - last.time > NEWS * rate) return "";
  const all = events.filter(({time: when}) => last.time - when <= TOGETHER).map((event) => eventText(event, words));
  return [timeText(last.time, {days: (count) => words("clock-days", {count})}), ...all].join(" ");
}
