//! A plan on its way to a friend and back: as a link, as a picture that another program reads, as pasted text.

use std::io::BufReader;

use anyhow::{Context, Result, ensure};
use kerbstead_core::plan::{Item, Plain, Plan, demo_plan};
use kerbstead_core::share::{Answer, Help, Mark, Parcel, Scope, found_in, open, seal};
use kerbstead_tests::browser::{Browser, Found, Scheme, Setup};
use serde_json::{Value, json};

/// A common phone.
const PHONE: Setup = Setup { width: 360, height: 780, scheme: Scheme::Light, folder: "/" };

/// What the example is called.
const TITLE: &str = "North with the harvest";

fn phone_at(route: &str) -> Result<Browser> {
    Browser::open_at(&PHONE, route)
}

/// The plans that are kept and the cards of the shelf, without when and how often each was kept.
const SHELF: &str = "
    const kept = Object.entries(localStorage).filter(([key]) => /^kerbstead\\.(plan\\.|shelf)/.test(key)).sort();
    return kept.map(([key, text]) => [key, JSON.parse(text).document ?? JSON.parse(text).cards]);";

fn shelf(browser: &Browser) -> Result<Value> {
    browser.script(SHELF, vec![])
}

/// What a program of others reads in the code on the screen, and its size and place there.
struct Photo {
    text: String,
    version: usize,
    module_px: f64,
}

/// Takes a picture of the screen, as a camera would, and reads it.
fn photograph(browser: &Browser) -> Result<Photo> {
    let code = browser.find_css(".code svg")?;
    browser.script("document.querySelector('.code svg').scrollIntoView({ block: 'center' })", vec![])?;
    let width = browser.script("return document.querySelector('.code svg').getBoundingClientRect().width", vec![])?;
    let modules = code.attribute("viewBox")?.context("no viewBox")?;
    let modules: f64 = modules.rsplit(' ').next().context("no width")?.parse()?;
    let file = tempfile::NamedTempFile::with_suffix(".png")?;
    browser.picture(file.path())?;
    let (width_px, luma) = grey(file.path())?;
    let height_px = luma.len() / width_px;
    let mut image = rqrr::PreparedImage::prepare_from_greyscale(width_px, height_px, |x, y| luma[y * width_px + x]);
    let grids = image.detect_grids();
    ensure!(grids.len() == 1, "{} codes are in the picture", grids.len());
    let (meta, text) = grids[0].decode()?;
    let module_px = width.as_f64().context("no width")? / modules;
    Ok(Photo { text, version: meta.version.0, module_px })
}

/// A picture's width and its pixels in shades of grey.
fn grey(path: &std::path::Path) -> Result<(usize, Vec<u8>)> {
    let mut decoder = png::Decoder::new(BufReader::new(std::fs::File::open(path)?));
    decoder.set_transformations(png::Transformations::EXPAND | png::Transformations::STRIP_16);
    let mut reader = decoder.read_info()?;
    let mut bytes = vec![0; reader.output_buffer_size().context("too large")?];
    let info = reader.next_frame(&mut bytes)?;
    let samples = info.color_type.samples();
    let of_pixel = |pixel: &[u8]| {
        let colours = &pixel[..samples.min(3)];
        let sum: usize = colours.iter().map(|byte| usize::from(*byte)).sum();
        u8::try_from(sum / colours.len()).unwrap_or(u8::MAX)
    };
    Ok((info.width as usize, bytes[..info.buffer_size()].chunks(samples).map(of_pixel).collect()))
}

fn link(browser: &Browser) -> Result<String> {
    browser.find("textbox", "The link")?.value()
}

/// The parcel in a link or a code.
fn opened(link: &str) -> Result<Parcel> {
    open(found_in(link)[0]).map_err(|why| anyhow::anyhow!("{link}: {why:?}"))
}

/// Chooses by a click on the label, as a thumb does.
fn tick<'b>(browser: &'b Browser, text: &str) -> Result<Found<'b>> {
    let label = browser.find_text(text)?;
    label.click()?;
    Ok(label)
}

/// A mark of a friend on an item of the plan.
fn mark(item: &Item, help: Help, says: &str) -> Mark {
    Mark { id: item.id, name: item.name.clone(), help, says: says.to_owned() }
}

fn route_of(parcel: &Parcel) -> Result<String> {
    Ok(format!("/open/{}", seal(parcel).map_err(|why| anyhow::anyhow!("{why:?}"))?))
}

fn plan_parcel(plan: &Plan) -> Parcel {
    Parcel::of(&plan.to_plain(), Scope::Whole, true)
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_code_on_a_phone_is_read_by_another_program_and_opens_the_same_plan() -> Result<()> {
    for scheme in Scheme::ALL {
        let browser = Browser::start(&Setup { scheme, ..PHONE })?;
        browser.load("/share")?;
        tick(&browser, "What to borrow")?;
        browser.wait_for_text("Nothing else of the plan.")?;
        let photo = photograph(&browser)?;
        ensure!(photo.module_px >= 3.0 && photo.version <= 20, "{} px, version {}", photo.module_px, photo.version);
        let link = link(&browser)?;
        ensure!(opened(&photo.text)? == opened(&link)?, "the code holds another plan than the link");
        let shown = browser.script("return document.querySelector('.code figcaption a').href", vec![])?;
        ensure!(shown == photo.text.as_str(), "the text below the code is {shown}");
        ensure!(photo.text.starts_with(&browser.address()), "{}", photo.text);
        browser.visit("about:blank")?;
        browser.visit(&photo.text)?;
        browser.wait_ready()?;
        browser.wait_for_text("This is a copy to look at.")?;
        browser.wait_for_text("Aunt Bera")?;
        browser.check_console()?;
        browser.check_requests()?;
    }
    Ok(())
}

/// A device with a way of its own to send things, which notes what it is to send; and a clipboard that does so too, or
/// refuses.
const DEVICE: &str = "
    navigator.share = (what) => { window.sent = what; return Promise.reject(new DOMException('changed my mind')); };
    if (navigator.clipboard) navigator.clipboard.writeText = (text) => {
        window.copied = text;
        return window.isRefusing ? Promise.reject(new DOMException('denied')) : Promise.resolve();
    };";

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_link_is_sent_by_the_device_or_copied_or_selected() -> Result<()> {
    let browser = Browser::start(&PHONE)?;
    browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": DEVICE }))?;
    browser.load("/share")?;
    let link = link(&browser)?;
    ensure!(link.len() <= 2_000, "the link has {} characters", link.len());
    browser.find("button", "Send the link")?.click()?;
    let sent = browser.script("return window.sent", vec![])?;
    ensure!(sent == json!({ "title": TITLE, "url": link }), "{sent}");
    browser.find("button", "Copy the link")?.click()?;
    browser.wait_for_text("The link is copied.")?;
    let copied = browser.script("window.isRefusing = true; return window.copied", vec![])?;
    ensure!(copied == link.as_str(), "{copied}");
    browser.find("button", "Copy the link")?.click()?;
    browser.wait_for_text("The link below is selected")?;
    let selected = browser.script("return document.getElementById('share-link').selectionEnd", vec![])?;
    ensure!(selected == link.len(), "{selected} characters are selected");
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_large_plan_takes_several_codes_that_wait_for_each_other() -> Result<()> {
    let browser = phone_at("/share")?;
    tick(&browser, "With amounts of money")?;
    browser.wait_for_text("How much cash you have.")?;
    browser.wait_for_text("QR code 1 of 2")?;
    let whole = opened(&link(&browser)?)?;
    let first = photograph(&browser)?;
    browser.find("button", "Next code")?.click()?;
    browser.wait_for_text("QR code 2 of 2")?;
    let second = photograph(&browser)?;
    for photo in [&first, &second] {
        ensure!(photo.module_px >= 3.0 && photo.version <= 20, "{} px, version {}", photo.module_px, photo.version);
    }
    // Each is opened in a page of its own, the second one first.
    browser.visit("about:blank")?;
    browser.visit(&second.text)?;
    browser.wait_for_text("1 of 2 codes are here. Still missing: code 1.")?;
    browser.visit("about:blank")?;
    browser.visit(&first.text)?;
    browser.wait_for_text("This is a copy to look at.")?;
    ensure!(opened(&browser.url()?)? == whole, "another plan was put together");
    browser.reload()?;
    browser.wait_for_text("This is a copy to look at.")?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn looking_at_a_friends_plan_changes_nothing_and_keeping_it_adds_one() -> Result<()> {
    let mut theirs = demo_plan();
    theirs.title = "South for the olives".to_owned();
    let browser = phone_at("/overview")?;
    let before = shelf(&browser)?;
    browser.load(&route_of(&plan_parcel(&theirs))?)?;
    browser.wait_for_text("South for the olives")?;
    browser.wait_for_text("Where it stands")?;
    browser.check_accessible()?;
    browser.check_fits_width()?;
    ensure!(shelf(&browser)? == before, "the shelf was changed by looking");
    browser.find("button", "Keep it as a plan of mine")?.click()?;
    browser.wait_until("the overview", |page| Ok(page.url()?.ends_with("#/overview")))?;
    browser.load("/plans")?;
    browser.find("button", "Delete “South for the olives”").map(drop)?;
    browser.find("button", &format!("Delete “{TITLE}”")).map(drop)?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_friend_offers_and_what_is_offered_is_taken_and_taken_back() -> Result<()> {
    let plan = demo_plan();
    let wanted = plan.kit.iter().find(|item| item.obtain.is_paid()).context("nothing to buy")?;
    // The friend's phone.
    let friend = phone_at(&route_of(&plan_parcel(&plan))?)?;
    friend.find("combobox", &wanted.name)?.choose("I can lend it")?;
    friend.find("textbox", &format!("What you say to “{}”", wanted.name))?.replace("Until May <b>or</b> June")?;
    friend.find("button", "Make it a link")?.click()?;
    friend.wait_for_text("Without your name")?;
    friend.find("textbox", "Your name")?.replace("Runa")?;
    friend.wait_for_text("Nothing of your own plans.")?;
    friend.reload()?;
    let kept = friend.find("textbox", "Your name")?.value()?;
    ensure!(kept == "Runa", "the answer was not kept: {kept:?}");
    friend.find("button", "Make it a link")?.click()?;
    let answer = link(&friend)?;
    let photo = photograph(&friend)?;
    ensure!(opened(&photo.text)? == opened(&answer)?, "the code holds another answer than the link");
    friend.check_accessible()?;
    friend.check_console()?;
    drop(friend);

    // One's own phone.
    let browser = phone_at("/open")?;
    browser.find("textbox", "The link, or the whole message")?.replace(&format!("Hello! {answer} Yours, Runa"))?;
    browser.find("button", "Open")?.click()?;
    browser.wait_for_text("An answer from Runa")?;
    browser.wait_for_text(&format!("{}: can lend it. “Until May <b>or</b> June”", wanted.name))?;
    browser.check_accessible()?;
    browser.check_fits_width()?;
    let before = shelf(&browser)?;
    browser.find("button", "Tick all")?.click()?;
    browser.find("button", "Take 3 changes")?.click()?;
    browser.wait_for_text("3 changes are taken.")?;
    browser.wait_for_text("Nothing in it differs from this plan.")?;
    browser.find_css(".notice button")?.click()?;
    browser.find("button", "Take 0 changes").map(drop)?;
    browser.wait_until("the plan as it was", |page| Ok(shelf(page)? == before))?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn offers_for_what_is_gone_are_told() -> Result<()> {
    let plan = demo_plan();
    let gone = Item { id: 7_000, name: "Rowing boat".to_owned(), ..Item::default() };
    let answer = Answer {
        from: "Runa".to_owned(),
        title: "An older plan".to_owned(),
        marks: vec![mark(&gone, Help::Lend, ""), mark(&plan.kit[0], Help::Do, "")],
        ..Answer::default()
    };
    let browser = phone_at(&route_of(&Parcel::Answer(answer))?)?;
    browser.wait_for_text("Your plan does not have this any more: Rowing boat.")?;
    browser.wait_for_text("It was made for “An older plan”.")?;
    browser.wait_for_text(&format!("{}: can do it", plan.kit[0].name))?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn an_answer_can_be_held_against_another_plan_of_the_shelf() -> Result<()> {
    let plan = demo_plan();
    let marks = vec![mark(&plan.kit[0], Help::Lend, "")];
    let answer = Answer { from: "Runa".to_owned(), title: TITLE.to_owned(), marks, ..Answer::default() };
    let browser = phone_at("/plans")?;
    browser.find("button", &format!("Copy “{TITLE}”"))?.click()?;
    browser.wait_for_text(&format!("{TITLE} (copy)"))?;
    browser.load(&route_of(&Parcel::Answer(answer))?)?;
    browser.wait_for_text(&format!("It was made for “{TITLE}”."))?;
    browser.find("combobox", "Held against your plan")?.choose(TITLE)?;
    browser.wait_until("the other plan", |page| Ok(!page.text()?.contains("It was made for")))?;
    browser.find("button", "Tick all")?.click()?;
    browser.find("button", "Take 2 changes")?.click()?;
    browser.wait_for_text("Nothing in it differs from this plan.")?;
    browser.find("combobox", "Held against your plan")?.choose(&format!("{TITLE} (copy)"))?;
    browser.find("button", "Take 0 changes").map(drop)?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn a_changed_plan_is_compared_and_taken_in_part() -> Result<()> {
    // The example as this page dates it, so that nothing else differs.
    let browser = phone_at("/share")?;
    tick(&browser, "With amounts of money")?;
    browser.wait_for_text("How much cash you have.")?;
    let Parcel::Plan { file, .. } = opened(&link(&browser)?)? else { anyhow::bail!("no plan") };
    let mut theirs = kerbstead_core::plan::Document::from_value(file).map_err(|why| anyhow::anyhow!("{why:?}"))?.plan;
    theirs.people += 1;
    theirs.kit.push(Item { id: 9_000, name: "Rain barrel".to_owned(), ..Item::default() });
    let gone = theirs.kit.remove(0);
    browser.load(&route_of(&plan_parcel(&theirs))?)?;
    browser.find("link", "Compare it with")?.click()?;
    browser.wait_for_text("To take or to leave")?;
    browser.wait_for_text(&format!("No longer there: {}", gone.name))?;
    browser.find("checkbox", "New: Rain barrel")?.click()?;
    browser.find("button", "Take 1 change")?.click()?;
    browser.wait_for_text("1 change is taken.")?;
    let left = browser.names("checkbox")?;
    let is_left = |what: &str| left.iter().any(|name| name.contains(what));
    ensure!(is_left("No longer there") && is_left("2 → 3") && !is_left("Rain barrel"), "{left:?}");
    browser.load("/kit")?;
    browser.wait_for_text("Rain barrel")?;
    browser.wait_for_text(&gone.name)?;
    browser.check_console()
}

#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn what_cannot_be_opened_says_why_and_what_to_do() -> Result<()> {
    let text = seal(&plan_parcel(&demo_plan())).map_err(|why| anyhow::anyhow!("{why:?}"))?;
    let cases = [
        (text[..text.len() - 9].to_owned(), "A piece of this link is missing"),
        (format!("4{}", &text[1..]), "made by a newer version"),
        ("1".repeat(33_000), "longer than is read"),
        ("hello".to_owned(), "holds no plan of this kind"),
    ];
    let browser = phone_at("/overview")?;
    let before = shelf(&browser)?;
    for (text, message) in cases {
        browser.load(&format!("/open/{text}"))?;
        browser.wait_for_text(message)?;
        browser.wait_for_text("Nothing of yours was changed.")?;
    }
    browser.check_accessible()?;
    browser.find("textbox", "The link, or the whole message")?.replace("no link at all")?;
    browser.find("button", "Open")?.click()?;
    let said = || Ok::<_, anyhow::Error>(browser.find_css("#pasted-message")?.text()?.contains("holds no plan"));
    browser.wait_until("the message", |_| said())?;
    ensure!(browser.find("textbox", "The link, or the whole message")?.value()? == "no link at all", "it was lost");
    ensure!(shelf(&browser)? == before, "the shelf was changed");
    browser.check_console()
}

/// Whatever a stranger writes into a plan is shown as they wrote it.
#[test]
#[ignore = "needs the bundle: cargo xtask test"]
fn text_of_strangers_is_shown_as_text() -> Result<()> {
    const HOSTILE: &str = "<img src=x onerror=\"document.title='caught'\"><script>1</script>{ $count }";
    let mut plan = demo_plan();
    plan.title = HOSTILE.to_owned();
    plan.currency = "EUR".to_owned();
    for item in &mut plan.kit {
        item.name = format!("{HOSTILE} {}", item.id);
        item.note = HOSTILE.to_owned();
        item.lender = HOSTILE.to_owned();
    }
    let browser = phone_at(&route_of(&plan_parcel(&plan))?)?;
    browser.wait_for_text(HOSTILE)?;
    browser.check_fits_width()?;
    browser.load(&route_of(&plan_parcel(&plan))?.replace("/open/", "/open/compare/"))?;
    browser.wait_for_text(HOSTILE)?;
    browser.check_fits_width()?;
    let marks = vec![mark(&plan.kit[0], Help::Lend, HOSTILE)];
    let answer = Answer { from: HOSTILE.to_owned(), title: HOSTILE.to_owned(), marks, ..Answer::default() };
    browser.load(&route_of(&Parcel::Answer(answer))?)?;
    browser.wait_for_text(HOSTILE)?;
    browser.check_fits_width()?;
    let made = browser.script("return document.querySelectorAll('#app img, #app script').length", vec![])?;
    ensure!(made == 0, "{made} elements came of a text");
    ensure!(!browser.script("return document.title", vec![])?.to_string().contains("caught"), "a script of theirs ran");
    browser.check_console()?;
    browser.check_requests()
}
