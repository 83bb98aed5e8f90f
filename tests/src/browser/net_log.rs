//! The browser's own log of the network. Unlike the log of a page, it has the requests of service workers too.

use anyhow::{Context, Result, ensure};
use serde_json::Value;
use std::path::Path;

/// The event that begins a request.
const BEGIN: &str = "URL_REQUEST_START_JOB";

/// The addresses that were asked for by pages and workers of an origin.
pub fn requests_from(log: &Path, origin: &str) -> Result<Vec<String>> {
    let text = std::fs::read_to_string(log).with_context(|| format!("reading {}", log.display()))?;
    let begin = number_of(BEGIN, &text).context("the network log does not number its events")?;
    // One event a line; the last line may be cut off.
    let events = text.lines().filter_map(|line| serde_json::from_str::<Value>(line.trim_end_matches(',')).ok());
    let addresses = events.filter(|event| event["type"] == begin).filter_map(|event| {
        let parameters = &event["params"];
        let address = parameters["url"].as_str()?;
        // A navigation has no initiator, but an address of the origin itself.
        let is_ours = parameters["initiator"] == origin || address.starts_with(origin);
        is_ours.then(|| address.to_owned())
    });
    let addresses: Vec<String> = addresses.collect();
    ensure!(!addresses.is_empty(), "the network log has no request of {origin}");
    Ok(addresses)
}

/// The number that stands for a kind of event, from the table at the beginning of the log.
fn number_of(event: &str, log: &str) -> Option<u64> {
    let rest = log.split_once(&format!("\"{event}\":"))?.1;
    rest.split([',', '}']).next()?.trim().parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn requests_to_elsewhere_are_found_in_a_log() -> Result<()> {
        let log = "{\"constants\": {\"logEventTypes\": {\"OTHER\":1,\"URL_REQUEST_START_JOB\":2}},\n\"events\": [\n\
            {\"type\":2,\"params\":{\"initiator\":\"http://a\",\"url\":\"https://b/x\"}},\n\
            {\"type\":1,\"params\":{\"initiator\":\"http://a\",\"url\":\"https://c/x\"}},\n\
            {\"type\":2,\"params\":{\"initiator\":\"not an origin\",\"url\":\"https://d/x\"}},\n\
            {\"type\":2,\"params\":{\"url\":\"http://a/x\"}},\n{\"type\":2,\"par";
        let folder = tempfile::tempdir()?;
        let path = folder.path().join("log.json");
        std::fs::write(&path, log)?;
        assert_eq!(requests_from(&path, "http://a")?, ["https://b/x", "http://a/x"]);
        Ok(())
    }
}
