// Starts the calculator and, where it cannot start, says in the page what to do about it.

const messages = {
  unsupported: [
    "This browser cannot run the calculator, because it has no WebAssembly.",
    "Open this page in an up-to-date browser. If a security setting of yours switches WebAssembly off, allow it for this page.",
  ],
  unfetched: [
    "A part of the calculator could not be fetched.",
    "Check the connection and reload the page. If it is your own copy, see that every file of the bundle is on the server.",
  ],
  failed: [
    "The calculator could not start.",
    "Reload the page. If that does not help, try an up-to-date browser and report the message below.",
  ],
};

function paragraph(text) {
  const element = document.createElement("p");
  element.textContent = text;
  return element;
}

function reloadButton() {
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = "Reload";
  button.addEventListener("click", () => location.reload());
  return button;
}

function explain(kind, error) {
  const state = document.getElementById("before-state");
  const box = document.createElement("div");
  box.setAttribute("role", "alert");
  box.append(...messages[kind].map(paragraph));
  if (error) box.append(paragraph(String(error)));
  box.append(reloadButton());
  if (state) state.replaceWith(box);
  else document.body.prepend(box);
}

/** The hashed names of the two files stand in the links that let the browser fetch them early. */
function address(selector) {
  return document.querySelector(selector).href;
}

async function fetchParts() {
  const [glue, wasm] = await Promise.all([
    import(address("link[rel=modulepreload]")),
    fetch(address("link[type='application/wasm']")),
  ]);
  if (!wasm.ok) throw new Error(`${wasm.url}: ${wasm.status}`);
  return { glue, wasm };
}

/**
 * The first formatters of a language take the browser long to make; later ones like them do not. There is time for it
 * while the module is on its way.
 */
function warmUp() {
  const { language } = navigator;
  new Intl.DateTimeFormat(language, { year: "numeric", month: "short", day: "numeric", timeZone: "UTC" });
  new Intl.NumberFormat(language, { style: "currency", currency: "EUR" });
}

async function start() {
  if (typeof WebAssembly !== "object") return explain("unsupported");
  const drawn = new Promise((resolve) => addEventListener("kerbstead-drawn", resolve, { once: true }));
  setTimeout(warmUp);
  let parts;
  try {
    parts = await fetchParts();
  } catch (error) {
    return explain("unfetched", error);
  }
  try {
    await parts.glue.default({ module_or_path: parts.wasm });
  } catch (error) {
    explain("failed", error);
    // If the calculator itself broke, broken.js has more to offer.
    throw error;
  }
  await drawn;
  document.getElementById("before")?.remove();
  dispatchEvent(new Event("kerbstead-started"));
}

start();
