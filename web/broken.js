// When the calculator itself breaks, it can draw nothing any more. This script needs none of it: it puts a plain page in
// its place, with all that the browser keeps as one file.
//
// A fault in the calculator stops its WebAssembly at once (a trap), without a word to anyone, and reaches the window as
// an error that nobody caught. So does an error of the browser's own that went through WebAssembly, which leaves the
// calculator half way through something.

const PREFIX = "kerbstead.";

function isBreak(error) {
  const { RuntimeError } = globalThis.WebAssembly ?? {};
  return (RuntimeError && error instanceof RuntimeError) || /wasm-function\[/.test(error?.stack);
}

function element(tag, text, ...children) {
  const made = document.createElement(tag);
  made.append(text, ...children);
  return made;
}

function button(text, act) {
  const made = element("button", text);
  made.type = "button";
  made.addEventListener("click", act);
  return made;
}

/** All that is kept, by its name in the storage: as it would be in a file, or as text where it is no JSON. */
function kept() {
  const all = {};
  for (const [key, text] of Object.entries(localStorage)) {
    if (!key.startsWith(PREFIX)) continue;
    try {
      all[key] = JSON.parse(text);
    } catch {
      all[key] = text;
    }
  }
  return all;
}

function isAnythingKept() {
  try {
    return Object.keys(kept()).length > 0;
  } catch {
    // The browser refuses its storage.
    return false;
  }
}

function save() {
  const file = new Blob([JSON.stringify(kept(), null, 1)], { type: "application/json" });
  const link = element("a", "");
  link.href = URL.createObjectURL(file);
  link.download = `kerbstead-kept-${new Date().toISOString().slice(0, 10)}.json`;
  link.click();
  // Some browsers fetch the file only a moment later.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

function advice() {
  const reload = button("Reload", () => location.reload());
  reload.className = "primary";
  if (!isAnythingKept()) {
    return [element("p", "This browser let the page keep nothing, so what you entered here is gone."), reload];
  }
  return [
    element("p", "What you entered is kept in this browser, except perhaps the very last change. Reload to go on."),
    element("p", "If it stops again, or to be on the safe side, save all that is kept as a file."),
    element("p", reload, " ", button("Save everything as a file", save)),
  ];
}

function show(error) {
  if (document.getElementById("broken")) return;
  const version = document.querySelector("meta[name=version]")?.content;
  const heading = element("h1", "The calculator has stopped");
  const report = element("p", `${error} (version ${version})`);
  const page = element(
    "main",
    heading,
    element("p", "A fault in the calculator itself has stopped it. It is nothing that you did."),
    ...advice(),
    element("details", element("summary", "For whoever looks into it"), report),
  );
  page.id = "broken";
  heading.tabIndex = -1;
  document.title = "Stopped · Kerbstead";
  document.documentElement.removeAttribute("data-ready");
  document.body.replaceChildren(page);
  heading.focus();
}

addEventListener("error", (event) => isBreak(event.error) && show(event.error));
addEventListener("unhandledrejection", (event) => isBreak(event.reason) && show(event.reason));
