// Before the first paint: the kept theme, else what the device prefers. A classic script, so that nothing flashes.
{
  let kept = null;
  try {
    kept = JSON.parse(localStorage.getItem("loadfirst:theme"));
  } catch {
    // no storage: the device decides
  }
  const dark = kept ? kept === "dark" : matchMedia("(prefers-color-scheme: dark)").matches;
  document.documentElement.dataset.theme = dark ? "dark" : "light";
}
