//! A small server of static files: what any static host does, on this machine.

mod files;

pub use files::Files;

use anyhow::{Result, anyhow};
use flate2::{Compression, write::GzEncoder};
use std::io::Write as _;
use std::net::{IpAddr, SocketAddr};
use std::path::Path;
use std::sync::Arc;
use std::thread::JoinHandle;
use tiny_http::{Header, Method, Request, Response};

/// Browsers fetch several files at once; more threads than this would not serve them sooner.
const THREADS: usize = 4;

/// A running server; it stops when dropped.
pub struct Server {
    http: Arc<tiny_http::Server>,
    address: SocketAddr,
    prefix: String,
    threads: Vec<JoinHandle<()>>,
}

impl Server {
    /// Serves `folder` at `http://host:port/prefix`; port 0 takes any free one. The prefix begins and ends
    /// with a slash.
    pub fn start(folder: &Path, host: IpAddr, port: u16, prefix: &str) -> Result<Self> {
        let files = Arc::new(Files::new(folder, prefix)?);
        let http = tiny_http::Server::http((host, port)).map_err(|error| anyhow!("{host}:{port}: {error}"))?;
        let address = http.server_addr().to_ip().unwrap_or_else(|| SocketAddr::new(host, port));
        let http = Arc::new(http);
        let threads = (0..THREADS).map(|_| answer_on_thread(&http, &files)).collect();
        Ok(Self { http, address, prefix: prefix.to_owned(), threads })
    }

    /// The port that it listens on.
    pub fn port(&self) -> u16 {
        self.address.port()
    }

    /// The address of the start page.
    pub fn url(&self) -> String {
        format!("http://{}{}", self.address, self.prefix)
    }

    /// Scheme, host and port, without a slash at the end.
    pub fn origin(&self) -> String {
        format!("http://{}", self.address)
    }

    /// Waits for as long as it serves, which is until the process ends.
    pub fn wait(mut self) {
        for thread in self.threads.drain(..) {
            // A thread that panicked has said so; the others go on.
            let _ = thread.join();
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        for _ in &self.threads {
            self.http.unblock();
        }
        for thread in self.threads.drain(..) {
            let _ = thread.join();
        }
    }
}

fn answer_on_thread(http: &Arc<tiny_http::Server>, files: &Arc<Files>) -> JoinHandle<()> {
    let (http, files) = (Arc::clone(http), Arc::clone(files));
    std::thread::spawn(move || {
        // An error here is the signal to stop.
        while let Ok(request) = http.recv() {
            // A browser that went away before its answer is no trouble of ours.
            let _ = answer(request, &files);
        }
    })
}

fn answer(request: Request, files: &Files) -> std::io::Result<()> {
    if !matches!(request.method(), Method::Get | Method::Head) {
        return request.respond(Response::from_string("only GET and HEAD\n").with_status_code(405));
    }
    let Some(file) = files.find(request.url()) else {
        return request.respond(Response::from_string("there is no such file\n").with_status_code(404));
    };
    let bytes = std::fs::read(&file.path)?;
    let zip = file.compressible && accepts_gzip(&request);
    let body = if zip { gzip(&bytes, Compression::new(6))? } else { bytes };
    let mut response = Response::from_data(body);
    let mut headers = vec![
        ("Content-Type", file.content_type),
        // A rebuilt page must show at once, and the files are on this machine.
        ("Cache-Control", "no-cache"),
        ("X-Content-Type-Options", "nosniff"),
        ("Vary", "Accept-Encoding"),
    ];
    if zip {
        headers.push(("Content-Encoding", "gzip"));
    }
    for (name, value) in headers {
        if let Ok(header) = Header::from_bytes(name, value) {
            response.add_header(header);
        }
    }
    request.respond(response)
}

fn accepts_gzip(request: &Request) -> bool {
    let accept = |header: &&Header| header.field.equiv("Accept-Encoding");
    request.headers().iter().find(accept).is_some_and(|header| header.value.as_str().contains("gzip"))
}

/// The bytes in gzip's format.
pub fn gzip(bytes: &[u8], level: Compression) -> std::io::Result<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), level);
    encoder.write_all(bytes)?;
    encoder.finish()
}
