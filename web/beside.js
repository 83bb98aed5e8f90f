// Works out what takes long beside the page: with a copy of the same module of its own, one question at a time.
//
// The page first sends the addresses of the module's script and of the module, then questions: [number, question]. What
// goes back is [number, share that is done, what can be shown already], and at the end [number, 1, answer]. A question with another number takes the
// place of the one before; one without a question only ends it.

/** So long is worked without looking whether something else is asked. */
const SLICE_MS = 20;

let loading;
let wanted;

addEventListener("message", ({ data }) => {
  if (!loading) loading = load(...data);
  else work(...data).catch(fail);
});

async function load(glue, wasm) {
  const parts = await import(glue);
  await parts.default({ module_or_path: wasm });
  return parts;
}

async function work(number, question) {
  wanted = number;
  if (question === undefined) return;
  const { begin_task, go_on, answer_so_far, task_answer } = await loading;
  if (wanted !== number) return;
  begin_task(question);
  for (;;) {
    const until = performance.now() + SLICE_MS;
    let share;
    do share = go_on();
    while (share < 1 && performance.now() < until);
    if (share >= 1) return postMessage([number, 1, task_answer()]);
    postMessage([number, share, answer_so_far()]);
    await new Promise((resolve) => setTimeout(resolve));
    if (wanted !== number) return;
  }
}

/** As an error of this worker, which the page hears of; within a promise it would be lost. */
function fail(error) {
  setTimeout(() => {
    throw error;
  });
}
