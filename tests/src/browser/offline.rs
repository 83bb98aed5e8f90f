//! What is kept on the device, and how it is replaced by a newer version.

use super::Browser;
use anyhow::{Context, Result};
use thirtyfour::WindowHandle;

const IS_KEPT: &str = "return navigator.serviceWorker.controller?.state === 'activated'";

/// Has the browser look for a newer version now; the answer is how that ended: "installed" or "redundant".
const LOOK: &str = "
    const done = arguments[arguments.length - 1];
    navigator.serviceWorker.getRegistration().then((registration) => {
        registration.addEventListener('updatefound', () => {
            const worker = registration.installing;
            worker.addEventListener('statechange', () => done(worker.state), { once: true });
        });
        return registration.update();
    }).catch((error) => done(String(error)));";

const VERSION: &str = "return document.querySelector('meta[name=version]').content";

const CACHES: &str = "
    const done = arguments[arguments.length - 1];
    caches.keys().then(done);";

impl Browser {
    /// Waits until the whole calculator is on the device and answers this page.
    pub fn wait_kept(&self) -> Result<()> {
        self.wait_until("the service worker", |browser| Ok(browser.script(IS_KEPT, vec![])? == true))
    }

    /// Has the browser look for a newer version, and tells how that ended: "installed" or "redundant".
    pub fn look_for_update(&self) -> Result<String> {
        let state = self.script_async(LOOK, vec![])?;
        Ok(state.as_str().unwrap_or_default().to_owned())
    }

    /// The version of the present page.
    pub fn version(&self) -> Result<String> {
        Ok(self.script(VERSION, vec![])?.as_str().context("the page has no version")?.to_owned())
    }

    /// The names of the versions on the device.
    pub fn kept_versions(&self) -> Result<Vec<String>> {
        let names = self.script_async(CACHES, vec![])?;
        Ok(names.as_array().into_iter().flatten().filter_map(|name| name.as_str().map(str::to_owned)).collect())
    }

    /// Opens another tab, which then is the present one; its number is how many there were before.
    pub fn open_tab(&self) -> Result<()> {
        let tab = self.run(async |web| web.new_tab().await)?;
        self.run(async |web| web.switch_to_window(tab).await)
    }

    /// The present tab.
    pub fn tab(&self) -> Result<WindowHandle> {
        self.run(async |web| web.window().await)
    }

    /// Closes the present tab and turns to another. One whose process is gone cannot always be closed, and is left.
    pub fn close_tab(&self, next: &WindowHandle) -> Result<()> {
        let closed = self.run(async |web| web.close_window().await);
        let next = next.clone();
        self.run(async |web| web.switch_to_window(next).await).with_context(|| format!("{closed:?}"))
    }

    /// Turns to a tab by its number, in the order in which they were opened.
    pub fn turn_to_tab(&self, number: usize) -> Result<()> {
        let tabs = self.run(async |web| web.windows().await)?;
        let tab = tabs.get(number).context("there is no such tab")?.clone();
        self.run(async |web| web.switch_to_window(tab).await)
    }
}
