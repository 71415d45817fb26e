/* Runs before the first paint, so that a chosen theme does not flash in. A file of its own because the content policy allows no inline script. */
(() => {
  const named = new URLSearchParams(location.search).get("theme");
  let kept = null;
  try {
    kept = localStorage.getItem("stillroom-theme");
  } catch {
    /* storage may be shut; the reader's own preference then decides */
  }
  const theme = named ?? kept;
  if (theme === "light" || theme === "dark" || theme === "sun") document.documentElement.dataset.theme = theme;
})();
