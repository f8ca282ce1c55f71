// What a bench asks of the browser besides drawing: a screen that stays on, and an alarm that is heard and felt.
// Speaks with the page by events on window:
//
//   batterwright:stay-awake, batterwright:may-sleep   from the page: keep the screen on, or no longer
//   batterwright:ring, batterwright:quiet             from the page: sound the alarm, or stop
//   batterwright:kitchen                              to the page: one of the two marks below has changed
//
// The html element carries what came of it: data-awake is "yes", "no" or "cannot"; data-sound is "ready" once the browser
// lets the page sound, "blocked" until a touch allows it, or "cannot". It is a plain script, since it is nothing but calls
// to the browser.

(() => {
  const marks = document.documentElement.dataset;
  const mark = (name, value) => {
    if (marks[name] === value) return;
    marks[name] = value;
    window.dispatchEvent(new CustomEvent("batterwright:kitchen"));
  };

  // The screen.

  let wanted = false;
  let asking = false;
  let lock = null;

  const hold = async () => {
    // Asked twice at once, a browser gives two locks, and one of them would never be let go of.
    if (!wanted || asking || lock || document.visibilityState !== "visible") return;
    if (!navigator.wakeLock) {
      mark("awake", "cannot");
      return;
    }
    asking = true;
    try {
      const held = await navigator.wakeLock.request("screen");
      if (!wanted) {
        await held.release();
        return;
      }
      lock = held;
      mark("awake", "yes");
      // A browser lets go of it when the page is hidden or the battery is low.
      held.addEventListener("release", () => {
        lock = null;
        mark("awake", "no");
        hold();
      });
    } catch {
      mark("awake", "cannot");
    } finally {
      asking = false;
    }
  };

  const letGo = async () => {
    const held = lock;
    lock = null;
    mark("awake", "no");
    await held?.release().catch(() => {});
  };

  window.addEventListener("batterwright:stay-awake", () => {
    wanted = true;
    hold();
  });
  window.addEventListener("batterwright:may-sleep", () => {
    wanted = false;
    letGo();
  });
  document.addEventListener("visibilitychange", hold);

  // The alarm.

  const Context = window.AudioContext ?? window.webkitAudioContext;
  let context = null;
  let ringing = null;

  const look = () => mark("sound", !Context ? "cannot" : context?.state === "running" ? "ready" : "blocked");

  // Browsers let a page sound only after a touch or a key.
  const unlock = async () => {
    if (!Context) return;
    try {
      context ??= new Context();
      if (context.state !== "running") await context.resume();
    } catch {
      // It stays blocked, and the page says so.
    }
    look();
  };
  for (const touch of ["pointerup", "keydown"]) window.addEventListener(touch, unlock, { passive: true });

  // Two short notes a third apart, loud enough for a kitchen and without a file to load.
  const beep = () => {
    if (context?.state !== "running") return;
    for (const [begins, tone] of [[0, 880], [0.25, 1109], [0.5, 880], [0.75, 1109]]) {
      const voice = context.createOscillator();
      const volume = context.createGain();
      const from = context.currentTime + begins;
      voice.type = "square";
      voice.frequency.value = tone;
      volume.gain.setValueAtTime(0.0001, from);
      volume.gain.exponentialRampToValueAtTime(0.25, from + 0.02);
      volume.gain.exponentialRampToValueAtTime(0.0001, from + 0.2);
      voice.connect(volume).connect(context.destination);
      voice.start(from);
      voice.stop(from + 0.22);
    }
  };

  // Refused before the first touch, and unknown to some browsers.
  const shake = (pattern) => {
    if (navigator.userActivation?.hasBeenActive !== false) navigator.vibrate?.(pattern);
  };

  const ring = () => {
    beep();
    shake([300, 120, 300, 120, 300]);
  };

  window.addEventListener("batterwright:ring", () => {
    if (ringing) return;
    ring();
    ringing = setInterval(ring, 2000);
  });
  window.addEventListener("batterwright:quiet", () => {
    if (!ringing) return;
    clearInterval(ringing);
    ringing = null;
    shake(0);
  });

  marks.awake = "no";
  look();
})();
