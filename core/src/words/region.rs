//! What a region of the world usually means for a new plan; the person can change all of it.

use super::Units;

/// Units that are usual in a region, by its ISO 3166-1 code: US customary in the three countries that have not changed.
pub fn units_of(region: &str) -> Units {
    if matches!(region, "US" | "LR" | "MM") { Units::UsCustomary } else { Units::Metric }
}

/// The currency of a region by its ISO 3166-1 code, where it is surely known; otherwise the euro.
/// Source: ISO 4217, list one (from memory).
pub fn currency_of(region: &str) -> &'static str {
    match region {
        "AU" => "AUD",
        "BR" => "BRL",
        "CA" => "CAD",
        "CH" | "LI" => "CHF",
        "CL" => "CLP",
        "CZ" => "CZK",
        "DK" => "DKK",
        "GB" => "GBP",
        "HU" => "HUF",
        "IN" => "INR",
        "IS" => "ISK",
        "JP" => "JPY",
        "KR" => "KRW",
        "KW" => "KWD",
        "MX" => "MXN",
        "NO" => "NOK",
        "NZ" => "NZD",
        "PL" => "PLN",
        "RO" => "RON",
        "SE" => "SEK",
        "TR" => "TRY",
        "US" => "USD",
        "ZA" => "ZAR",
        _ => "EUR",
    }
}
