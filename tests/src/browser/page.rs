//! What a person does with a page as a whole, and what the device does to it.

use super::{Browser, Scheme};
use anyhow::{Context, Result, bail};
use kerbstead_core::plan::{Document, Plan};
use serde_json::{Value, json};
use std::future::Future;
use std::path::Path;
use std::time::Duration;
use thirtyfour::error::WebDriverResult;
use thirtyfour::{TypingData, WebDriver};
use tokio::time::Instant;

/// How long the page may take for anything, also on a busy machine with a slowed processor.
const PATIENCE: Duration = Duration::from_secs(20);
const PAUSE: Duration = Duration::from_millis(25);

impl Browser {
    /// Opens a page of the bundle anew, and waits until it is ready. `route` is what stands behind the `#`.
    pub fn load(&self, route: &str) -> Result<()> {
        // From a page of the bundle to another only the fragment would change, which loads nothing.
        self.visit("about:blank")?;
        self.visit(&format!("{}#{route}", self.start_page))?;
        self.wait_ready().with_context(|| format!("the page {route}"))
    }

    /// Loads the present page again, as a person would to see whether anything was kept.
    pub fn reload(&self) -> Result<()> {
        self.run(async |web| web.refresh().await)?;
        self.wait_ready()
    }

    /// Opens any address, without waiting for more than the browser does.
    pub fn visit(&self, url: &str) -> Result<()> {
        self.run(async |web| web.goto(url).await).with_context(|| format!("opening {url}"))
    }

    /// The address of the start page, without a fragment.
    pub fn address(&self) -> String {
        self.start_page.clone()
    }

    /// Waits until the page says that it is ready, with `data-ready` on `<html>`; fails at once when it says that it
    /// could not start.
    pub fn wait_ready(&self) -> Result<()> {
        let state = "return document.documentElement.hasAttribute('data-ready')
            ? 'ready' : document.querySelector('#before [role=alert], #broken')?.innerText";
        self.wait_until("<html data-ready>", |browser| match browser.script(state, vec![])?.as_str() {
            Some("ready") => Ok(true),
            Some(trouble) => bail!("the calculator did not start: {trouble}"),
            None => Ok(false),
        })
    }

    /// Waits until the page shows a text.
    pub fn wait_for_text(&self, text: &str) -> Result<()> {
        self.wait_until(&format!("the text {text:?}"), |browser| Ok(browser.text()?.contains(text)))
    }

    /// Waits until something holds. The error of a wait in vain shows the page's text and the console.
    pub fn wait_until(&self, what: &str, holds: impl Fn(&Self) -> Result<bool>) -> Result<()> {
        let end = Instant::now() + PATIENCE;
        while Instant::now() < end {
            if holds(self)? {
                return Ok(());
            }
            self.runtime.block_on(async { tokio::time::sleep(PAUSE).await });
        }
        let problems = self.console_problems()?.join("\n");
        bail!("waited in vain for {what}. The page shows:\n{}\nThe console says:\n{problems}", self.text()?)
    }

    /// All the text that the page shows.
    pub fn text(&self) -> Result<String> {
        let text = self.script("return document.body ? document.body.innerText : ''", vec![])?;
        Ok(text.as_str().unwrap_or_default().to_owned())
    }

    /// The address of the present page.
    pub fn url(&self) -> Result<String> {
        Ok(self.run(async |web| web.current_url().await)?.to_string())
    }

    /// Lets the file of a plan fall onto the page, and opens it.
    ///
    /// # Errors
    /// When the page does not take it.
    pub fn open_file_of(&self, plan: &Plan) -> Result<()> {
        const DROP: &str = "
            const data = new DataTransfer();
            data.items.add(new File([arguments[0]], 'plan.json', { type: 'application/json' }));
            document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));";
        self.script(DROP, vec![Document::new(plan).write(plan).to_string().into()])?;
        self.wait_for_text("What is in the file")?;
        self.find("button", "Do so")?.click()?;
        self.wait_for_text("One plan was taken over.")?;
        self.find("button", &format!("Open “{}”", plan.title))?.click()
    }

    /// Types keys to whatever has the focus.
    pub fn press(&self, keys: impl Into<TypingData>) -> Result<()> {
        let keys = keys.into();
        self.run(async |web| web.action_chain().send_keys(keys).perform().await)
    }

    /// Runs a script as the body of a function and gives what it returns.
    pub fn script(&self, script: &str, arguments: Vec<Value>) -> Result<Value> {
        let value = self.run(async |web| web.execute(script, arguments).await)?;
        Ok(value.json().clone())
    }

    /// Runs a script that ends by calling its last argument with a result.
    pub fn script_async(&self, script: &str, arguments: Vec<Value>) -> Result<Value> {
        let value = self.run(async |web| web.execute_async(script, arguments).await)?;
        Ok(value.json().clone())
    }

    /// Sends a command of the developer tools' protocol.
    pub fn devtools(&self, method: &str, parameters: Value) -> Result<Value> {
        self.run(async |web| web.cdp().send_raw(method, parameters).await).with_context(|| method.to_owned())
    }

    /// The page's size in CSS pixels; windows have a least width, pages have none.
    pub fn set_size(&self, width: u32, height: u32) -> Result<()> {
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false });
        self.devtools("Emulation.setDeviceMetricsOverride", size).map(drop)
    }

    /// What the device prefers.
    pub fn set_scheme(&self, scheme: Scheme) -> Result<()> {
        self.set_media("", &[("prefers-color-scheme", scheme.name())])
    }

    /// The medium ("print", or "" for the screen) and media features, in place of all set before.
    pub fn set_media(&self, medium: &str, features: &[(&str, &str)]) -> Result<()> {
        let feature = |(name, value): &(&str, &str)| json!({ "name": name, "value": value });
        let features: Vec<Value> = features.iter().map(feature).collect();
        let media = json!({ "media": medium, "features": features });
        self.devtools("Emulation.setEmulatedMedia", media).map(drop)
    }

    /// Makes the processor this many times slower; 1 is its own speed.
    pub fn slow_processor(&self, times: u32) -> Result<()> {
        self.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": times })).map(drop)
    }

    /// A picture of what the window shows, as PNG.
    pub fn picture(&self, path: &Path) -> Result<()> {
        self.run(async |web| web.screenshot(path).await).with_context(|| format!("a picture in {}", path.display()))
    }

    /// A picture of the whole page, as PNG.
    pub fn full_picture(&self, path: &Path) -> Result<()> {
        let measure = "const e = document.scrollingElement; return [innerWidth, innerHeight, e.scrollHeight]";
        let measured = self.script(measure, vec![])?;
        let pixels = |index: usize| measured[index].as_u64().and_then(|n| u32::try_from(n).ok()).unwrap_or(1);
        self.set_size(pixels(0), pixels(2).max(pixels(1)))?;
        let taken = self.picture(path);
        self.set_size(pixels(0), pixels(1))?;
        taken
    }

    /// Runs one command of the driver to its end.
    pub(super) fn run<'a, T, F>(&'a self, command: impl FnOnce(&'a WebDriver) -> F) -> Result<T>
    where
        F: Future<Output = WebDriverResult<T>>,
    {
        let web = self.web.as_ref().context("the browser is closed")?;
        Ok(self.runtime.block_on(command(web))?)
    }
}
