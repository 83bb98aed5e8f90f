//! Installed, without a connection, and replaced by a newer version.

use anyhow::{Context, Result, ensure};
use kerbstead_tests::browser::{Browser, ROUTES, Setup};
use serde_json::{Value, json};
use std::path::Path;
use tempfile::TempDir;

const UNDER_A_PATH: Setup =
    Setup { width: 360, height: 740, scheme: kerbstead_tests::browser::Scheme::Light, folder: "/some/where/" };

/// The real width and height of each icon of the manifest, in its order.
const ICON_SIZES: &str = "
    const done = arguments[arguments.length - 1];
    const size = async (icon) => {
        const image = await createImageBitmap(await (await fetch(icon.src)).blob());
        return image.width + 'x' + image.height;
    };
    Promise.all(arguments[0].map(size)).then(done, (error) => done(String(error)));";

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn it_can_be_installed() -> Result<()> {
    let browser = Browser::start(&UNDER_A_PATH)?;
    browser.load("/")?;
    browser.wait_kept()?;
    let errors = browser.devtools("Page.getInstallabilityErrors", json!({}))?;
    ensure!(errors["installabilityErrors"] == json!([]), "it cannot be installed: {errors}");
    let answer = browser.devtools("Page.getAppManifest", json!({}))?;
    ensure!(answer["errors"] == json!([]), "the manifest is wrong: {answer}");
    let manifest: Value = serde_json::from_str(answer["data"].as_str().context("there is no manifest")?)?;
    let icons = manifest["icons"].as_array().context("there are no icons")?;
    let stated: Vec<&Value> = icons.iter().map(|icon| &icon["sizes"]).collect();
    let real = browser.script_async(ICON_SIZES, vec![json!(icons)])?;
    ensure!(real == json!(stated), "the icons are {real} and not {stated:?}");
    let start = answer["manifest"]["startUrl"].as_str().or(answer["parsed"]["startUrl"].as_str());
    ensure!(start.is_none_or(|start| start == browser.address()), "it starts at {start:?}");
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn after_one_visit_everything_works_without_a_connection() -> Result<()> {
    let mut browser = Browser::start(&UNDER_A_PATH)?;
    browser.load("/")?;
    browser.wait_kept()?;
    browser.stop_server();
    for route in ROUTES {
        browser.load(route)?;
        ensure!(browser.text()?.len() > 100, "{route} shows next to nothing");
    }
    browser.load("/kit")?;
    browser.find("textbox", "What is it?")?.replace("Rain barrel")?;
    browser.find("button", "Add")?.click()?;
    browser.wait_for_text("“Rain barrel” is in the kit.")?;
    browser.reload()?;
    browser.wait_for_text("Rain barrel")?;
    // A page that the calculator does not have leads to its first one, and not to the browser's own about errors.
    browser.visit(&format!("{}no/such/page", browser.address()))?;
    browser.wait_ready()?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn no_request_of_anything_leaves_the_host() -> Result<()> {
    let (bundle, browser) = on_a_copy()?;
    let origin = browser.address().split("/some").next().unwrap_or_default().to_owned();
    for route in ROUTES {
        browser.load(route)?;
    }
    renew(bundle.path())?;
    browser.look_for_update()?;
    browser.find("button", "Use it now")?.click()?;
    browser.wait_ready()?;
    let requests = browser.end()?;
    let worker = requests.iter().filter(|address| address.ends_with("/service-worker.js")).count();
    ensure!(worker > 0, "the log misses the service worker: {requests:?}");
    let strange: Vec<&String> =
        requests.iter().filter(|address| !address.starts_with(&format!("{origin}/some/where/"))).collect();
    ensure!(strange.is_empty(), "requests left the page's folder: {strange:?}");
    Ok(())
}

/// Types into a field and begins the new version at once, before what was typed is kept by itself.
const TYPE_AND_BEGIN: &str = "
    const field = document.querySelector(arguments[0]);
    field.value = arguments[1];
    field.dispatchEvent(new Event('input', { bubbles: true }));
    [...document.querySelectorAll('button')].find((button) => button.textContent === 'Use it now').click();";

/// What the style sheet of the second version says, and the first does not.
const EDITION: &str = "return getComputedStyle(document.documentElement).getPropertyValue('--edition')";

/// Whether a file is there for this page, by its address.
const IS_THERE: &str = "
    const done = arguments[arguments.length - 1];
    fetch(arguments[0], { cache: 'no-store' }).then((response) => done(response.ok), () => done(false));";

const STYLE_SHEET: &str = "return document.querySelector('link[rel=stylesheet]').href";

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_new_version_waits_until_it_is_asked_for_and_loses_no_edit() -> Result<()> {
    let (bundle, browser) = on_a_copy()?;
    browser.open_tab()?;
    browser.load("/water")?;
    let before = browser.version()?;
    let style_before = browser.script(STYLE_SHEET, vec![])?;
    browser.turn_to_tab(0)?;
    browser.load("/in-and-out")?;
    let cash = browser.find("textbox", "Cash on the first day")?;
    let field = format!("#{}", cash.attribute("id")?.context("the field has no id")?);

    renew(bundle.path())?;
    ensure!(browser.look_for_update()? == "installed", "the new version did not arrive");
    browser.wait_for_text("A new version is ready.")?;
    ensure!(browser.version()? == before, "the page changed by itself");
    browser.check_accessible()?;
    browser.check_fits_width()?;
    browser.script(TYPE_AND_BEGIN, vec![json!(field), json!("1234.5")])?;
    browser.wait_until("the new version", |page| Ok(page.version().is_ok_and(|version| version != before)))?;
    browser.wait_ready()?;
    let kept = browser.find("textbox", "Cash on the first day")?.value()?;
    ensure!(kept.contains("1234.5") || kept.contains("1,234.5"), "the field holds {kept:?}");
    ensure!(browser.url()?.ends_with("#/in-and-out"), "another page is shown: {}", browser.url()?);
    all_of_one_version(&browser, "2")?;

    // The other tab still has its own version, whole, although the host no longer has it.
    browser.turn_to_tab(1)?;
    ensure!(browser.version()? == before, "the other tab changed by itself");
    all_of_one_version(&browser, "")?;
    ensure!(browser.script_async(IS_THERE, vec![style_before.clone()])? == true, "its files are gone");
    ensure!(browser.kept_versions()?.len() == 2, "versions: {:?}", browser.kept_versions()?);
    browser.find("button", "Use it now")?.click()?;
    browser.wait_until("the new version", |page| Ok(page.version().is_ok_and(|version| version != before)))?;
    browser.wait_ready()?;
    all_of_one_version(&browser, "2")?;
    browser.wait_until("the end of the old version", |page| Ok(page.kept_versions()?.len() == 1))?;
    ensure!(browser.script_async(IS_THERE, vec![style_before])? == false, "files of the old version are left");
    Ok(())
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_version_that_arrives_in_part_is_not_used() -> Result<()> {
    let (bundle, browser) = on_a_copy()?;
    let before = browser.version()?;
    renew(bundle.path())?;
    std::fs::remove_file(bundle.path().join(STYLE_OF_THE_SECOND))?;
    ensure!(browser.look_for_update()? == "redundant", "half a version was taken");
    browser.reload()?;
    ensure!(browser.version()? == before, "the page is of the new version");
    all_of_one_version(&browser, "")?;
    ensure!(!browser.text()?.contains("A new version is ready"), "half a version was offered");
    Ok(())
}

/// Which of the two versions the page and its style sheet are of.
fn all_of_one_version(browser: &Browser, edition: &str) -> Result<()> {
    let style = browser.script(EDITION, vec![])?;
    ensure!(style == edition, "the style sheet is of another version: {style}");
    let address = browser.script(STYLE_SHEET, vec![])?;
    let is_second = address.as_str().is_some_and(|address| address.ends_with(STYLE_OF_THE_SECOND));
    ensure!(is_second == (edition == "2"), "the page is of another version: {address}");
    Ok(())
}

/// A browser on a copy of the bundle that may be changed, with the copy kept on the device.
fn on_a_copy() -> Result<(TempDir, Browser)> {
    let bundle = TempDir::new()?;
    copy(&xtask::workspace::dist(), bundle.path())?;
    let browser = Browser::start_on(bundle.path(), &UNDER_A_PATH)?;
    browser.load("/")?;
    browser.wait_kept()?;
    Ok((bundle, browser))
}

fn copy(from: &Path, to: &Path) -> Result<()> {
    std::fs::create_dir_all(to)?;
    for entry in std::fs::read_dir(from)? {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy(&entry.path(), &target)?;
        } else {
            std::fs::copy(entry.path(), &target)?;
        }
    }
    Ok(())
}

/// What the style sheet is called in the second version; a build would put the hash of its content there.
const STYLE_OF_THE_SECOND: &str = "main-2222222222222222.css";

/// Puts a second version in place of the first, as an upload of the next build does.
fn renew(bundle: &Path) -> Result<()> {
    let names = xtask::bundle::offline::kept(bundle)?;
    let style = names.iter().find(|name| name.starts_with("main-")).context("the bundle has no style sheet")?;
    let rules = std::fs::read_to_string(bundle.join(style))?;
    std::fs::write(bundle.join(STYLE_OF_THE_SECOND), format!("{rules}\n:root{{--edition:2}}"))?;
    std::fs::remove_file(bundle.join(style))?;
    let page = std::fs::read_to_string(bundle.join("index.html"))?;
    std::fs::write(bundle.join("index.html"), page.replace(style.as_str(), STYLE_OF_THE_SECOND))?;
    xtask::bundle::offline::write(bundle)
}
