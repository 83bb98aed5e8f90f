//! Opening a browser on the bundle, and ending everything that was started for it.

use super::{Setup, driver::Driver, net_log};
use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};
use std::cell::RefCell;
use std::net::{IpAddr, Ipv4Addr};
use std::path::Path;
use std::time::Duration;
use tempfile::TempDir;
use thirtyfour::{Capabilities, WebDriver};
use tokio::runtime::Runtime;
use xtask::server::Server;

/// How long the end of a session may take before it is ended by force.
const PATIENCE: Duration = Duration::from_secs(5);

/// The browser's own log of the network, in its profile.
const NET_LOG: &str = "net-log.json";

const ARGUMENTS: [&str; 10] = [
    "--headless=new",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--disable-dev-shm-usage",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--hide-scrollbars",
];

/// A browser that shows the bundle. Fields are dropped in this order, the browser's session before all.
pub struct Browser {
    pub(super) web: Option<WebDriver>,
    pub(super) runtime: Runtime,
    /// The server, until it is stopped.
    site: Option<Server>,
    /// Scheme, host and port of the server, without a slash at the end.
    pub(super) origin: String,
    /// The address of the start page.
    pub(super) start_page: String,
    /// Console messages at warning or above, since the opening.
    pub(super) problems: RefCell<Vec<String>>,
    /// Addresses that the browser asked for, since the opening.
    pub(super) requests: RefCell<Vec<String>>,
    pub(super) process_id: Option<u64>,
    driver: Driver,
    profile: TempDir,
}

impl Browser {
    /// Serves the bundle and opens its start page; returns when the page is ready.
    pub fn open(setup: &Setup) -> Result<Self> {
        Self::open_at(setup, "/")
    }

    /// As [`Browser::open`], at another page.
    pub fn open_at(setup: &Setup, route: &str) -> Result<Self> {
        let browser = Self::start(setup)?;
        browser.load(route)?;
        Ok(browser)
    }

    /// As [`Browser::open`], but with an empty page.
    pub fn start(setup: &Setup) -> Result<Self> {
        Self::start_on(&xtask::workspace::dist(), setup)
    }

    /// As [`Browser::start`], on a bundle that lies elsewhere, such as a copy that a test changes.
    pub fn start_on(dist: &Path, setup: &Setup) -> Result<Self> {
        ensure!(
            dist.join("index.html").is_file(),
            "there is no bundle in {}: run `cargo xtask build` first",
            dist.display()
        );
        let site = Server::start(dist, IpAddr::V4(Ipv4Addr::LOCALHOST), 0, setup.folder)?;
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build()?;
        let profile = TempDir::new().context("no folder for the browser's profile")?;
        let driver = Driver::start()?;
        let web = runtime
            .block_on(WebDriver::new(driver.url(), capabilities(&profile)?))
            .context("Chromium did not start")?;
        let process_id = web.capabilities().get("goog:processID").and_then(Value::as_u64);
        let browser = Self {
            web: Some(web),
            runtime,
            origin: site.origin(),
            start_page: site.url(),
            site: Some(site),
            problems: RefCell::default(),
            requests: RefCell::default(),
            process_id,
            driver,
            profile,
        };
        browser.set_size(setup.width, setup.height)?;
        browser.set_scheme(setup.scheme)?;
        Ok(browser)
    }

    /// Ends the whole browser at once, without a word, and opens it again on the same profile.
    pub fn kill_and_open(&mut self, setup: &Setup) -> Result<()> {
        let id = self.process_id.context("the browser's process is not known")?;
        super::kill(u32::try_from(id)?)?;
        // The driver sees that its browser is gone.
        if let Some(web) = self.web.take() {
            let _ = self.runtime.block_on(async { tokio::time::timeout(PATIENCE, web.quit()).await });
        }
        let capabilities = capabilities(&self.profile)?;
        let web = self.runtime.block_on(WebDriver::new(self.driver.url(), capabilities)).context("a second start")?;
        self.process_id = web.capabilities().get("goog:processID").and_then(Value::as_u64);
        self.web = Some(web);
        self.set_size(setup.width, setup.height)
    }

    /// A folder that the browser saves files in from now on.
    pub fn downloads(&self) -> Result<TempDir> {
        let folder = TempDir::new().context("no folder for files")?;
        let behavior = json!({ "behavior": "allow", "downloadPath": folder.path() });
        self.devtools("Browser.setDownloadBehavior", behavior)?;
        Ok(folder)
    }

    /// Stops the server: from then on there is no connection, as in a van without signal.
    pub fn stop_server(&mut self) {
        self.site = None;
    }

    /// Ends the browser and tells of every request that anything of the calculator made over the network, also the
    /// service worker, from the log that the browser itself wrote.
    pub fn end(mut self) -> Result<Vec<String>> {
        let web = self.web.take().context("the browser is closed")?;
        self.runtime.block_on(web.quit())?;
        net_log::requests_from(&self.profile.path().join(NET_LOG), &self.origin)
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        let Some(web) = self.web.take() else { return };
        let ended = self.runtime.block_on(async { tokio::time::timeout(PATIENCE, web.quit()).await });
        if matches!(ended, Ok(Ok(()))) {
            return;
        }
        if let Some(id) = self.process_id {
            // Without its session the browser would outlive the driver.
            let _ = u32::try_from(id).map(super::kill);
        }
    }
}

fn capabilities(profile: &TempDir) -> Result<Capabilities> {
    let mut arguments: Vec<String> = ARGUMENTS.iter().map(ToString::to_string).collect();
    arguments.push(format!("--user-data-dir={}", profile.path().display()));
    arguments.push(format!("--log-net-log={}", profile.path().join(NET_LOG).display()));
    // Instead of the browser's own start page, which is large.
    arguments.push("about:blank".to_owned());
    let value = json!({
        "browserName": "chrome",
        "goog:chromeOptions": { "binary": xtask::tools::chromium()?, "args": arguments },
        "goog:loggingPrefs": { "browser": "ALL", "performance": "ALL" },
    });
    serde_json::from_value(value).context("capabilities")
}
