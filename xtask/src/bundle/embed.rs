//! The entrance for other pages: `kerbstead.js`, whose name stays while the names behind it carry hashes.

use crate::hash;
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

/// Names the module and its script after what has become of them, so that a name never stands for another content.
pub fn rename(dist: &Path) -> Result<()> {
    let old = stem(dist)?;
    let read =
        |end: &str| std::fs::read(dist.join(format!("{old}{end}"))).with_context(|| format!("reading {old}{end}"));
    let hash = hash::short(&[read("_bg.wasm")?, read(".js")?].concat());
    let name = old.rsplit_once('-').map_or(old.as_str(), |(name, _)| name);
    let new = format!("{name}-{hash}");
    for end in ["_bg.wasm", ".js", ".d.ts"] {
        let (from, to) = (dist.join(format!("{old}{end}")), dist.join(format!("{new}{end}")));
        std::fs::rename(&from, to).with_context(|| format!("renaming {}", from.display()))?;
    }
    for text in ["index.html".to_owned(), format!("{new}.js")] {
        replace(dist, &text, &old, &new)?;
    }
    Ok(())
}

/// Does the same with the script for what is worked out beside the page, so that a page never gets that of another version.
pub fn rename_beside(dist: &Path) -> Result<()> {
    const NAME: &str = "beside.js";
    let path = dist.join(NAME);
    let script = std::fs::read(&path).with_context(|| format!("reading {NAME}"))?;
    let new = format!("beside-{}.js", hash::short(&script));
    std::fs::rename(&path, dist.join(&new)).with_context(|| format!("renaming {NAME}"))?;
    replace(dist, "index.html", NAME, &new)
}

fn replace(dist: &Path, text: &str, old: &str, new: &str) -> Result<()> {
    let before = std::fs::read_to_string(dist.join(text)).with_context(|| format!("reading {text}"))?;
    put(dist, text, &before.replace(old, new))
}

/// The common beginning of the hashed names, such as `kerbstead-web-1a2b3c`.
pub fn stem(dist: &Path) -> Result<String> {
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
