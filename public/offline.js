// Registers the worker that keeps the page on this device, and speaks with the page by events on window:
//
//   batterwright:offline-ready  to the page: everything is kept, the network may go
//   batterwright:update-ready   to the page: a new version is here and waits for a yes
//   batterwright:take-over      from the page: yes, change to the new version now
//
// The first two can come before the page listens, so they also stand as data-offline="ready" and
// data-update="ready" on the html element. It is a plain script and not part of the module, so that a page
// whose module fails can still be mended by the next version.

(() => {
  const marks = document.documentElement.dataset;
  let registration = null;
  let changing = false;

  const tell = (what) => {
    marks[what] = "ready";
    window.dispatchEvent(new CustomEvent(`batterwright:${what}-ready`));
  };

  // The browser may have cleared what was kept: ready is only said once the worker has looked, and fetched it again.
  const keep = (worker) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => tell("offline");
    worker.postMessage({ type: "keep" }, [port2]);
  };

  const follow = (worker) => {
    const look = () => {
      if (worker.state === "installed" && registration.active) tell("update");
      if (worker.state === "activated") keep(worker);
    };
    worker.addEventListener("statechange", look);
    look();
  };

  window.addEventListener("batterwright:take-over", () => {
    changing = true;
    if (registration?.waiting) registration.waiting.postMessage({ type: "take-over" });
    // Another window has already made the change: this one only has to load again.
    else window.location.reload();
  });

  // The page's policy lets no text be the address of a script, except by this, which knows one.
  const workerAddress = () => {
    const only = { createScriptURL: () => "./worker.js" };
    return window.trustedTypes?.createPolicy("batterwright", only).createScriptURL("") ?? "./worker.js";
  };

  const register = async () => {
    try {
      registration = await navigator.serviceWorker.register(workerAddress());
    } catch (error) {
      // Forbidden by the browser or its settings: the page works, but only with a network.
      console.info("The page cannot be kept on this device:", error.message);
      return;
    }
    navigator.serviceWorker.addEventListener("controllerchange", () => {
      if (changing) window.location.reload();
      else tell("update");
    });
    registration.addEventListener("updatefound", () => follow(registration.installing));
    for (const worker of [registration.installing, registration.waiting, registration.active]) {
      if (worker) follow(worker);
    }
  };

  if ("serviceWorker" in navigator) {
    // After the first paint, so that keeping the page never slows showing it.
    if (document.readyState === "complete") register();
    else window.addEventListener("load", register);
  }
})();
