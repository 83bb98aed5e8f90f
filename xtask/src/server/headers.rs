//! The headers of an answer: what every static host should send, as the README tells.

use super::files::File;

/// Sent with every file. `default-src 'self'` and all that follows from it hold the page to its promise that no request
/// leaves its host; the same policy stands in the page itself, except for what only a header can say.
pub const EVERY_FILE: [(&str, &str); 7] = [
    (
        "Content-Security-Policy",
        "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; \
         object-src 'none'; base-uri 'none'; form-action 'none'; worker-src 'self'; manifest-src 'self'; \
         frame-ancestors 'none'",
    ),
    ("Cross-Origin-Opener-Policy", "same-origin"),
    ("Cross-Origin-Embedder-Policy", "require-corp"),
    ("Cross-Origin-Resource-Policy", "same-origin"),
    ("X-Content-Type-Options", "nosniff"),
    ("Referrer-Policy", "no-referrer"),
    ("Permissions-Policy", "camera=(), geolocation=(), microphone=(), payment=(), usb=()"),
];

/// A name with a hash in it never changes its content.
pub const HASHED: &str = "public, max-age=31536000, immutable";

/// Any other name is asked for again each time; as long as it is unchanged, only a few bytes travel.
pub const UNHASHED: &str = "no-cache";

/// How long a browser may keep a file.
pub fn cache_control(file: &File) -> &'static str {
    let name = file.path.file_name().and_then(std::ffi::OsStr::to_str).unwrap_or_default();
    if has_hash(name) { HASHED } else { UNHASHED }
}

/// Whether one part of the name is a hash: sixteen hexadecimal digits, of which Trunk leaves zeros in front away.
fn has_hash(name: &str) -> bool {
    let is_hash = |part: &str| (12..=16).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_hexdigit());
    name.split(['-', '_', '.']).any(is_hash)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_names_with_a_hash_stay_for_good() {
        for name in ["main-7c44cdb082d03e5c.css", "broken-318526635c051ac.js", "kerbstead-web-c11b63f0dadbf5b2_bg.wasm"]
        {
            assert!(has_hash(name), "{name}");
        }
        for name in ["index.html", "service-worker.js", "plan.schema.json", "kerbstead.js", "apple-touch-icon.png"] {
            assert!(!has_hash(name), "{name}");
        }
    }

    #[test]
    fn the_readme_tells_of_the_headers_that_are_sent_here() {
        let readme = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../README.md")).unwrap();
        for (name, value) in EVERY_FILE {
            assert!(readme.contains(&format!("{name}: {value}\n")), "{name}: {value}");
        }
        for value in [HASHED, UNHASHED] {
            assert!(readme.contains(&format!("Cache-Control: {value}")), "{value}");
        }
    }

    /// What only a header can say; a page that says it gets a warning in the console.
    const ONLY_IN_HEADERS: &str = "; frame-ancestors 'none'";

    #[test]
    fn the_page_has_the_same_policy_in_itself() {
        let page = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../index.html")).unwrap();
        let policy = EVERY_FILE[0].1.strip_suffix(ONLY_IN_HEADERS).unwrap();
        assert!(page.contains(&format!("content=\"{policy}\"")), "{policy}");
    }
}
