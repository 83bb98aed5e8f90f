//! The entrance for other pages: `kerbstead.js`, whose name stays while the names behind it carry hashes.

use anyhow::{Context, Result, bail};
use std::path::Path;

/// Writes `kerbstead.js` and `kerbstead.d.ts` beside the hashed files.
pub fn write(dist: &Path) -> Result<()> {
    let stem = stem(dist)?;
    put(dist, "kerbstead.js", &module(&stem))?;
    let types = dist.join(format!("{stem}.d.ts"));
    std::fs::rename(&types, dist.join("kerbstead.d.ts")).with_context(|| format!("trunk wrote no {}", types.display()))
}

fn put(dist: &Path, name: &str, text: &str) -> Result<()> {
    std::fs::write(dist.join(name), text).with_context(|| format!("writing {name}"))
}

/// The common beginning of the hashed names, such as `kerbstead-web-1a2b3c`.
fn stem(dist: &Path) -> Result<String> {
    let mut stems = Vec::new();
    for entry in std::fs::read_dir(dist).with_context(|| format!("reading {}", dist.display()))? {
        let name = entry?.file_name();
        stems.extend(name.to_str().and_then(|name| name.strip_suffix("_bg.wasm")).map(str::to_owned));
    }
    match stems.as_slice() {
        [stem] => Ok(stem.clone()),
        found => bail!("expected one *_bg.wasm in {}, found {found:?}", dist.display()),
    }
}

fn module(stem: &str) -> String {
    format!(
        "// Kerbstead's functions for other pages:\n\
         //   import start, * as kerbstead from \"./kerbstead.js\";\n\
         //   await start();\n\
         import init from \"./{stem}.js\";\n\
         export * from \"./{stem}.js\";\n\
         const wasm = new URL(\"./{stem}_bg.wasm\", import.meta.url);\n\
         export default (options) => init(options ?? {{ module_or_path: wasm }});\n"
    )
}
