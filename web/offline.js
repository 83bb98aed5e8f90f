// Has the calculator kept on the device by service-worker.js, and says when a newer version is ready.
//
// Where a browser has no service workers, or allows none (a page without https, a private window), nothing is said: all
// works as long as there is a connection.

const SCOPE = new URL("./", document.baseURI).href;
const ONE_HOUR = 3_600_000;

/** As long as this page is open, its version stays on the device: see `tidyUp` there. */
function holdVersion() {
  const version = document.querySelector("meta[name=version]").content;
  navigator.locks?.request(`kerbstead ${SCOPE} ${version}`, { mode: "shared" }, () => new Promise(() => {}));
}

/** The app shows that a newer version is ready, and answers with "kerbstead-update-taken" once all is kept. */
function offer() {
  dispatchEvent(new Event("kerbstead-update"));
}

async function keepOffline() {
  const { serviceWorker } = navigator;
  if (!serviceWorker) return;
  holdVersion();
  serviceWorker.controller?.postMessage("tidy up");
  try {
    const registration = await serviceWorker.register("service-worker.js", { updateViaCache: "none" });
    watch(serviceWorker, registration);
    takeWhenAsked(serviceWorker, registration);
    askEveryHour(registration);
  } catch {
    // Not allowed here, or no connection at the first visit: the next visit tries again.
  }
}

/** Without a controller the worker that arrives is the first, which is no news to anyone. */
function watch(serviceWorker, registration) {
  const follow = (worker) =>
    worker?.addEventListener("statechange", () => {
      if (worker.state === "installed" && serviceWorker.controller) offer();
    });
  if (registration.waiting && serviceWorker.controller) offer();
  follow(registration.installing);
  registration.addEventListener("updatefound", () => follow(registration.installing));
}

/** A new version begins in the page where it was asked for. Other pages go on with theirs until they are reloaded. */
function takeWhenAsked(serviceWorker, registration) {
  let isAsked = false;
  let isControlled = Boolean(serviceWorker.controller);
  addEventListener("kerbstead-update-taken", () => {
    isAsked = true;
    // Without one that waits, another page has let it begin already.
    if (registration.waiting) registration.waiting.postMessage("take over");
    else location.reload();
  });
  serviceWorker.addEventListener("controllerchange", () => {
    if (isAsked) location.reload();
    else if (isControlled) offer();
    isControlled = true;
  });
}

/** The browser looks for a newer version whenever the page is opened; one that stays open for days asks by itself. */
function askEveryHour(registration) {
  let asked = Date.now();
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState !== "visible" || Date.now() - asked < ONE_HOUR) return;
    asked = Date.now();
    // Without a connection there is nothing to find out.
    registration.update().catch(() => {});
  });
}

// Only then, so that nothing competes with the first start.
if (document.documentElement.hasAttribute("data-ready")) keepOffline();
else addEventListener("kerbstead-started", keepOffline);
