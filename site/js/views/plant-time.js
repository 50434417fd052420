// Plant time as people and as tables read it. No DOM.

const [MINUTE, HOUR, DAY] = [60, 3600, 86400]; // [s]
const two = (value) => String(value).padStart(2, "0");

/** "0:12:33"; tenths where they are asked for; days before it where there are any. [s] */
export function timeText(seconds, {tenths = false, days = (count) => `${count} d`} = {}) {
  const whole = tenths ? Math.round(10 * seconds) / 10 : Math.floor(seconds + 1e-6);
  const part = whole % MINUTE;
  const clock = `${Math.floor((whole % DAY) / HOUR)}:${two(Math.floor((whole % HOUR) / MINUTE))}:${tenths ? part.toFixed(1).padStart(4, "0") : two(part)}`;
  return whole >= DAY ? `${days(Math.floor(whole / DAY))} ${clock}` : clock;
}

/** A duration as ISO 8601 writes it: "P0DT00H12M33.500S". [s] */
export function isoTime(seconds) {
  const whole = Math.round(1000 * seconds) / 1000;
  const part = (whole % MINUTE).toFixed(3).padStart(6, "0");
  return `P${Math.floor(whole / DAY)}DT${two(Math.floor((whole % DAY) / HOUR))}H${two(Math.floor((whole % HOUR) / MINUTE))}M${part}S`;
}

const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10800, 21600, 43200, 86400];

/** Round times between two, at most about `count` of them. [s] */
export function timeTicks(from, to, count) {
  const least = (to - from) / Math.max(1, count);
  const step = STEPS.find((one) => one >= least) ?? DAY * Math.ceil(least / DAY);
  const ticks = [];
  for (let n = Math.ceil(from / step - 1e-9); n * step <= to + 1e-9; n++) ticks.push(Number((n * step).toFixed(3)));
  return {step, ticks};
}
