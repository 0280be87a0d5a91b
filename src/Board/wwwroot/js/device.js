// What the page asks of its browser. Runs before the page is drawn, so that the theme is right from the first moment.
window.scalelink = (() => {
  const key = name => `scalelink.${name}`;
  const root = document.documentElement;

  // Storage may be forbidden: then the device forgets, and everything else works.
  const read = name => {
    const asked = new URLSearchParams(location.search).get(name);
    if (asked !== null) return asked;
    try { return localStorage.getItem(key(name)); } catch { return null; }
  };
  const write = (name, value) => {
    try { localStorage.setItem(key(name), value); } catch { /* forgotten at the next visit */ }
  };

  const theme = name => { root.dataset.theme = name === "light" || name === "dark" ? name : "system"; };

  const bigScreen = (isOn, byHand) => {
    root.dataset.screen = isOn ? "big" : "normal";
    if (!byHand) return;
    // A browser may refuse the whole screen; the large digits come all the same.
    if (isOn) root.requestFullscreen?.().catch(() => {});
    else if (document.fullscreenElement) document.exitFullscreen().catch(() => {});
  };

  let sound;
  const chime = () => {
    sound ??= new AudioContext();
    [523.25, 783.99].forEach((pitch, k) => {
      const [tone, volume, start] = [sound.createOscillator(), sound.createGain(), sound.currentTime + k * 0.16];
      tone.frequency.value = pitch;
      volume.gain.setValueAtTime(0.3, start);
      volume.gain.exponentialRampToValueAtTime(0.001, start + 0.4);
      tone.connect(volume).connect(sound.destination);
      tone.start(start);
      tone.stop(start + 0.4);
    });
  };

  const say = text => {
    if (!("speechSynthesis" in window)) return;
    // What was going to be said is overtaken.
    speechSynthesis.cancel();
    const words = new SpeechSynthesisUtterance(text);
    words.lang = "en";
    speechSynthesis.speak(words);
  };

  // A foot switch is a keyboard. Whoever types into a field types, and a key that is held down is one press.
  const watchKeys = watcher => document.addEventListener("keydown", press => {
    if (press.repeat || press.ctrlKey || press.altKey || press.metaKey || press.target.closest?.("input, textarea, select, [contenteditable]")) return;
    if (watcher(press.code)) press.preventDefault();
  });

  let lock;
  const awake = async isOn => {
    try {
      await lock?.release();
      lock = isOn && !document.hidden ? await navigator.wakeLock?.request("screen") : undefined;
    } catch { /* the system needs its battery more */ }
  };

  const save = (name, type, bytes) => {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([bytes], { type }));
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60000);
  };

  const watchVisibility = watcher =>
    document.addEventListener("visibilitychange", () => watcher(!document.hidden));

  theme(read("theme"));
  bigScreen(read("big") === "on", false);
  return {
    read, write, theme, bigScreen, chime, save, watchVisibility,
    canVibrate: () => "vibrate" in navigator && navigator.maxTouchPoints > 0,
    say, watchKeys, awake,
    canSay: () => "speechSynthesis" in window,
    canStayAwake: () => "wakeLock" in navigator,
    vibrate: () => { navigator.vibrate?.(200); },
  };
})();
