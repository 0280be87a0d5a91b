// Until the page itself has started, shows the bay as the daemon draws it, and learns the daemon's clock for the page.
scalelink.clock = (() => {
  const EVERY_MS = 500, OLD_MS = 1000, PATIENCE_MS = 2000;
  const place = document.querySelector("#app > .opening");
  const notice = place.innerHTML;
  const away = notice.replace("Opening the board.", "The daemon does not answer. Start the daemon. This page asks again by itself. (SL-420)");
  let best = null;

  // The clock is known best by the answer that took the least time. The question's time stands for the answer's, so that no value looks too young.
  const learn = (answer, askedAt, took) => {
    if (best === null || took < best.took)
      best = { run: answer.headers.get("ScaleLink-Run"), ns: answer.headers.get("ScaleLink-Clock-Ns"), askedAt, took };
  };

  const show = (html, isDrawn) => {
    if (!place.isConnected || (!isDrawn && place.innerHTML === html)) return;
    place.innerHTML = html;
    place.classList.toggle("drawn", isDrawn);
    // Old age (base.css) begins anew with every answer.
    place.getAnimations().forEach(aging => { aging.currentTime = 0; });
  };

  // Asks once, and gives the time to wait before the next question, ms.
  const ask = async () => {
    const askedAt = performance.now();
    const asked = new URLSearchParams({ unit: scalelink.read("unit") ?? "", length: scalelink.read("length") ?? "" });
    try {
      const answer = await fetch(`opening?${asked}`, { cache: "no-store", signal: AbortSignal.timeout(PATIENCE_MS) });
      if (!answer.ok) throw new Error(`${answer.status}`);
      const html = await answer.text();
      const took = performance.now() - askedAt;
      learn(answer, askedAt, took);
      // A start that keeps the browser busy can keep an answer waiting until it is old.
      if (took > OLD_MS) return 0;
      show(html, true);
    } catch {
      // Nothing stays that is not known any more.
      show(away, false);
    }
    return EVERY_MS;
  };

  const follow = async () => {
    while (place.isConnected) {
      const wait = document.hidden ? EVERY_MS : await ask();
      await new Promise(done => setTimeout(done, wait));
    }
  };

  if (location.href.split(/[?#]/)[0] === document.baseURI) follow();
  return () => best && `${best.run} ${best.ns} ${performance.now() - best.askedAt}`;
})();
