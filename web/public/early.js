/*
 * Runs before anything else on the page, in a file of its own because the content policy allows no inline script: sets a chosen theme
 * before the first paint, and asks for the page's code and data at once, so that neither waits for the other.
 */
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

  const [, first = "", id = ""] = location.pathname.split("/");
  const folder = first === "" ? "calendar" : first;
  /* filled in by the build: the files of each page */
  const FILES = {};
  for (const file of FILES[folder] ?? []) {
    const link = document.createElement("link");
    link.href = `/${file}`;
    link.rel = file.endsWith(".css") ? "preload" : "modulepreload";
    if (file.endsWith(".css")) link.as = "style";
    document.head.append(link);
  }

  const lists = ["/api/beds", "/api/crops", "/api/health"];
  const plain = location.search === "";
  const DATA = {
    calendar: location.search.includes("week=") ? [] : ["/api/calendar"],
    today: ["/api/today"],
    beds: id === "" ? ["/api/sowings", ...lists] : [`/api/sowings/${id}`, `/api/picks?sowingId=${id}`, ...lists],
    recipes: id === "" ? ["/api/recipes/brief", "/api/crops"] : [],
    week: ["/api/health", "/api/take-out", "/api/larder"],
    season: ["/api/season/plan", "/api/stock-targets", "/api/wishes", "/api/stock-targets/suggested", "/api/recipes/brief", "/api/health"],
    larder: plain ? ["/api/larder", "/api/recipes/brief", "/api/crops"] : [],
    supplies: plain ? ["/api/shopping", "/api/supplies", "/api/take-out", "/api/larder"] : [],
    household: ["/api/weather", "/api/crops", "/api/tastes", "/api/recipes/brief", "/api/health"],
  };
  window.early = new Map();
  for (const url of [...(DATA[folder] ?? []), "/api/household"]) {
    const answer = fetch(url, { headers: { accept: "application/json" } });
    answer.catch(() => undefined);
    window.early.set(url, answer);
  }
})();
