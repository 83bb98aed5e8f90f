//! What must hold of every page: a quiet console, no request to elsewhere, access for all, no sideways scroll.

use super::{Browser, Scheme};
use anyhow::{Context, Result, bail, ensure};
use serde_json::{Value, json};

/// The rules of WCAG 2.2, level AA.
const TAGS: [&str; 5] = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

const AXE: &str = "
    const done = arguments[arguments.length - 1];
    const violation = v => v.id + ' (' + v.impact + '): ' + v.help + v.nodes.map(n =>
        '\\n    ' + n.target.join(' ') + '\\n      ' + n.failureSummary.replaceAll('\\n', '\\n      ')).join('');
    axe.run(document, { runOnly: { type: 'tag', values: arguments[0] }, resultTypes: ['violations'] })
        .then(result => done(result.violations.map(violation)), error => done(['axe failed: ' + error]));";

const WIDER: &str = "
    const page = document.scrollingElement;
    if (page.scrollWidth <= innerWidth) return [];
    const wide = [...document.body.querySelectorAll('*')].filter(e => e.getBoundingClientRect().right > innerWidth);
    return [page.scrollWidth + ' px wide in a window of ' + innerWidth,
        ...wide.slice(0, 12).map(e => e.tagName.toLowerCase() + (e.id && '#' + e.id) + (e.className && '.' + e.className)
            + ' reaches to ' + Math.round(e.getBoundingClientRect().right))];";

impl Browser {
    /// Console messages at warning or above since the opening.
    pub fn console_problems(&self) -> Result<Vec<String>> {
        let mut problems = self.problems.borrow_mut();
        for entry in self.run(async |web| web.get_log("browser").await)? {
            if matches!(entry.level.as_str(), "WARNING" | "SEVERE") {
                problems.push(format!("{}: {}", entry.level, entry.message));
            }
        }
        Ok(problems.clone())
    }

    /// Fails when the console has said anything at warning or above.
    pub fn check_console(&self) -> Result<()> {
        let problems = self.console_problems()?;
        ensure!(problems.is_empty(), "the console is not quiet:\n{}", problems.join("\n"));
        Ok(())
    }

    /// Addresses that the browser asked for since the opening, whether or not it got an answer.
    pub fn requests(&self) -> Result<Vec<String>> {
        let mut requests = self.requests.borrow_mut();
        for entry in self.run(async |web| web.get_log("performance").await)? {
            let event: Value = serde_json::from_str(&entry.message).context("an event of the network log")?;
            if event["message"]["method"] == "Network.requestWillBeSent" {
                let url = event["message"]["params"]["request"]["url"].as_str();
                requests.extend(url.map(str::to_owned));
            }
        }
        Ok(requests.clone())
    }

    /// Fails when the browser asked anyone but the bundle's own server.
    pub fn check_requests(&self) -> Result<()> {
        let own = format!("{}/", self.origin);
        // What a page makes itself, and the pages that the browser brings along.
        let schemes = ["data:", "blob:", "about:", "chrome:", "chrome-untrusted:"];
        let inner = |url: &String| schemes.iter().any(|scheme| url.starts_with(scheme));
        let requests = self.requests()?;
        ensure!(requests.iter().any(|url| url.starts_with(&own)), "the network log misses the page itself");
        let strange: Vec<String> = requests.into_iter().filter(|url| !url.starts_with(&own) && !inner(url)).collect();
        ensure!(strange.is_empty(), "requests left the page's origin:\n{}", strange.join("\n"));
        Ok(())
    }

    /// Fails with what axe-core finds against WCAG 2.2 AA in the present page.
    pub fn check_accessible(&self) -> Result<()> {
        let path = xtask::workspace::tools().join("node_modules/axe-core/axe.min.js");
        let axe = std::fs::read_to_string(&path)
            .with_context(|| format!("no {}: `cargo xtask test` installs it", path.display()))?;
        self.script(&axe, vec![])?;
        report("axe-core found", &self.script_async(AXE, vec![json!(TAGS)])?)
    }

    /// Fails with what is wrong with the present page: access in both schemes, width, messages of the console.
    pub fn audit(&self) -> Result<()> {
        for scheme in Scheme::ALL {
            self.set_scheme(scheme)?;
            self.check_accessible()?;
        }
        self.check_fits_width()?;
        self.check_console()
    }

    /// Fails when the page can be scrolled sideways, and says what is too wide.
    pub fn check_fits_width(&self) -> Result<()> {
        report("the page scrolls sideways", &self.script(WIDER, vec![])?)
    }
}

fn report(title: &str, found: &Value) -> Result<()> {
    let Some(items) = found.as_array() else { bail!("{title}? The page answered {found}") };
    let lines: Vec<&str> = items.iter().filter_map(Value::as_str).collect();
    ensure!(items.is_empty(), "{title}:\n  {}", lines.join("\n  "));
    Ok(())
}
