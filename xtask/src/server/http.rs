//! The part of HTTP/1.1 that a server of static files needs: RFC 9112, for requests without a body.
//!
//! Connections stay open between requests. A library that did this left requests of a busy browser without an answer,
//! because it counted a thread as free that had been woken for another connection already.

use std::io::{self, BufRead, BufReader, Read as _, Write as _};
use std::net::TcpStream;
use std::time::Duration;

/// The most bytes before the empty line; a longer request is none of a browser's.
const LONGEST_HEAD: u64 = 64 * 1024;

/// How long a connection may be idle.
const IDLE: Duration = Duration::from_mins(2);

/// What is asked for.
pub struct Request {
    /// `GET`, `HEAD`, or another.
    pub method: String,
    /// The path, with what stands behind `?`.
    pub target: String,
    headers: Vec<(String, String)>,
    is_last: bool,
}

/// What is sent back.
pub struct Answer {
    /// The number of the outcome.
    pub status: u16,
    /// Names and values.
    pub headers: Vec<(String, String)>,
    /// The content.
    pub body: Vec<u8>,
}

impl Request {
    /// Whether a header mentions something.
    pub fn header_has(&self, name: &str, what: &str) -> bool {
        self.headers.iter().any(|(key, value)| key.eq_ignore_ascii_case(name) && value.contains(what))
    }
}

impl Answer {
    /// A text for people.
    pub fn plain(status: u16, text: &str) -> Self {
        let headers = vec![owned(("Content-Type", "text/plain; charset=utf-8"))];
        Self { status, headers, body: text.as_bytes().to_vec() }
    }

    /// Adds a header.
    pub fn header(&mut self, name: &str, value: &str) {
        self.headers.push(owned((name, value)));
    }
}

/// A header that is not part of the program.
pub fn owned((name, value): (&str, &str)) -> (String, String) {
    (name.to_owned(), value.to_owned())
}

/// Answers the requests of a connection, one after another, until either side closes it.
pub fn converse(mut stream: &TcpStream, answer: impl Fn(&Request) -> Answer) -> io::Result<()> {
    stream.set_read_timeout(Some(IDLE))?;
    stream.set_nodelay(true)?;
    let mut reader = BufReader::new(stream);
    while let Some(request) = read(&mut reader)? {
        let text = write(&request, &answer(&request));
        stream.write_all(&text)?;
        if request.is_last {
            break;
        }
    }
    Ok(())
}

/// The next request, or nothing when there is none or it is not understood.
fn read(reader: &mut impl BufRead) -> io::Result<Option<Request>> {
    let mut head = reader.take(LONGEST_HEAD);
    let mut lines = Vec::new();
    loop {
        let mut line = String::new();
        if head.read_line(&mut line)? == 0 {
            return Ok(None);
        }
        match line.trim_end() {
            "" if lines.is_empty() => {}
            "" => return Ok(parse(&lines)),
            text => lines.push(text.to_owned()),
        }
    }
}

fn parse(lines: &[String]) -> Option<Request> {
    let (first, rest) = lines.split_first()?;
    let mut parts = first.split(' ');
    let (method, target, version) = (parts.next()?, parts.next()?, parts.next()?);
    let headers = rest.iter().filter_map(|line| line.split_once(':'));
    let headers = headers.map(|(name, value)| owned((name.trim(), value.trim()))).collect();
    let mut request = Request { method: method.to_owned(), target: target.to_owned(), headers, is_last: false };
    // What follows a body would be taken for a request.
    let may_have_body = !matches!(method, "GET" | "HEAD");
    request.is_last = may_have_body || version != "HTTP/1.1" || request.header_has("Connection", "close");
    Some(request)
}

fn write(request: &Request, answer: &Answer) -> Vec<u8> {
    let reason = match answer.status {
        200 => "OK",
        304 => "Not Modified",
        404 => "Not Found",
        405 => "Method Not Allowed",
        _ => "",
    };
    let mut text = format!("HTTP/1.1 {} {reason}\r\n", answer.status);
    for (name, value) in &answer.headers {
        text.push_str(&format!("{name}: {value}\r\n"));
    }
    if answer.status != 304 {
        text.push_str(&format!("Content-Length: {}\r\n", answer.body.len()));
    }
    if request.is_last {
        text.push_str("Connection: close\r\n");
    }
    text.push_str("\r\n");
    let mut bytes = text.into_bytes();
    if request.method != "HEAD" {
        bytes.extend(&answer.body);
    }
    bytes
}

#[cfg(test)]
mod tests {
    use super::*;

    fn next(text: &str) -> Option<Request> {
        read(&mut text.as_bytes()).unwrap()
    }

    #[test]
    fn a_request_is_read_to_its_empty_line() {
        let request = next("GET /a?b HTTP/1.1\r\nHost: x\r\naccept-encoding: br, gzip\r\n\r\nGET /c").unwrap();
        assert_eq!((request.method.as_str(), request.target.as_str()), ("GET", "/a?b"));
        assert!(request.header_has("Accept-Encoding", "gzip"));
        assert!(!request.is_last);
    }

    #[test]
    fn a_connection_ends_when_the_other_side_says_so_or_may_send_a_body() {
        for text in [
            "GET / HTTP/1.0\r\n\r\n",
            "GET / HTTP/1.1\r\nConnection: close\r\n\r\n",
            "POST / HTTP/1.1\r\nContent-Length: 1\r\n\r\nx",
        ] {
            assert!(next(text).unwrap().is_last, "{text}");
        }
    }

    #[test]
    fn what_is_no_request_gets_no_answer() {
        assert!(next("").is_none());
        assert!(next("GET /a HTTP/1.1\r\nHost: x").is_none());
        assert!(next("nonsense\r\n\r\n").is_none());
        assert!(next(&format!("GET /{} HTTP/1.1\r\n\r\n", "a".repeat(100_000))).is_none());
    }

    #[test]
    fn an_unchanged_file_is_not_sent_again() {
        let request = next("GET / HTTP/1.1\r\n\r\n").unwrap();
        let answer = Answer { status: 304, headers: Vec::new(), body: Vec::new() };
        assert_eq!(write(&request, &answer), b"HTTP/1.1 304 Not Modified\r\n\r\n");
    }
}
