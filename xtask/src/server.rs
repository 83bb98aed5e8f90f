//! A small server of static files: what any static host does, on this machine.

mod files;
mod headers;
mod http;

pub use files::Files;

use crate::hash;
use anyhow::{Context, Result};
use flate2::{Compression, write::GzEncoder};
use http::{Answer, Request};
use std::collections::BTreeMap;
use std::io::Write as _;
use std::net::{IpAddr, Shutdown, SocketAddr, TcpListener, TcpStream};
use std::path::Path;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread::JoinHandle;

/// A running server; it stops when dropped, and then answers nobody any more, not even on an open connection.
pub struct Server {
    address: SocketAddr,
    prefix: String,
    shared: Arc<Shared>,
    accepting: Option<JoinHandle<()>>,
}

/// What all connections have in common.
struct Shared {
    files: Files,
    is_stopping: AtomicBool,
    connections: Mutex<BTreeMap<usize, TcpStream>>,
}

impl Shared {
    /// The open connections, by number.
    fn open(&self) -> MutexGuard<'_, BTreeMap<usize, TcpStream>> {
        self.connections.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Server {
    /// Serves `folder` at `http://host:port/prefix`; port 0 takes any free one. The prefix begins and ends
    /// with a slash.
    pub fn start(folder: &Path, host: IpAddr, port: u16, prefix: &str) -> Result<Self> {
        let files = Files::new(folder, prefix)?;
        let listener = TcpListener::bind((host, port)).with_context(|| format!("{host}:{port}"))?;
        let address = listener.local_addr()?;
        let shared = Arc::new(Shared { files, is_stopping: AtomicBool::new(false), connections: Mutex::default() });
        let accepting = Some(accept_on_thread(listener, Arc::clone(&shared)));
        Ok(Self { address, prefix: prefix.to_owned(), shared, accepting })
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
        if let Some(thread) = self.accepting.take() {
            // If it panicked, it has said so.
            let _ = thread.join();
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.shared.is_stopping.store(true, Ordering::SeqCst);
        // Wakes the thread that waits for the next connection.
        drop(TcpStream::connect(self.address));
        if let Some(thread) = self.accepting.take() {
            let _ = thread.join();
        }
        for connection in self.shared.open().values() {
            // It fails only when the other side has closed it already.
            let _ = connection.shutdown(Shutdown::Both);
        }
    }
}

/// A browser opens six connections at once and keeps them open, so each has a thread of its own.
fn accept_on_thread(listener: TcpListener, shared: Arc<Shared>) -> JoinHandle<()> {
    std::thread::spawn(move || {
        for (number, connection) in listener.incoming().flatten().enumerate() {
            if shared.is_stopping.load(Ordering::SeqCst) {
                return;
            }
            let shared = Arc::clone(&shared);
            std::thread::spawn(move || serve(number, &connection, &shared));
        }
    })
}

fn serve(number: usize, connection: &TcpStream, shared: &Shared) {
    if let Ok(handle) = connection.try_clone() {
        shared.open().insert(number, handle);
    }
    if shared.is_stopping.load(Ordering::SeqCst) {
        return;
    }
    // A browser that goes away before its answer is no trouble of ours.
    let _ = http::converse(connection, |request| answer(request, &shared.files));
    shared.open().remove(&number);
}

fn answer(request: &Request, files: &Files) -> Answer {
    if !matches!(request.method.as_str(), "GET" | "HEAD") {
        return Answer::plain(405, "only GET and HEAD\n");
    }
    let Some(file) = files.find(&request.target) else { return Answer::plain(404, "there is no such file\n") };
    let Ok(bytes) = std::fs::read(&file.path) else { return Answer::plain(404, "the file cannot be read\n") };
    // Weak, because the compressed bytes have the same.
    let tag = format!("W/\"{}\"", hash::short(&bytes));
    let mut answer = Answer { status: 200, headers: headers::EVERY_FILE.map(http::owned).to_vec(), body: bytes };
    answer.header("Content-Type", file.content_type);
    answer.header("Cache-Control", headers::cache_control(&file));
    answer.header("Vary", "Accept-Encoding");
    answer.header("ETag", &tag);
    if request.header_has("If-None-Match", &tag) {
        return Answer { status: 304, body: Vec::new(), ..answer };
    }
    if file.compressible
        && request.header_has("Accept-Encoding", "gzip")
        && let Ok(zipped) = gzip(&answer.body, Compression::new(6))
    {
        answer.body = zipped;
        answer.header("Content-Encoding", "gzip");
    }
    answer
}

/// The bytes in gzip's format.
pub fn gzip(bytes: &[u8], level: Compression) -> std::io::Result<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), level);
    encoder.write_all(bytes)?;
    encoder.finish()
}
