//! `cargo xtask serve`: builds the calculator and serves it.

use crate::server::Server;
use crate::{bundle, workspace};
use anyhow::{Context, Result, bail};
use std::net::{IpAddr, Ipv4Addr, UdpSocket};

/// How many ports to try when the asked one is taken.
const TRIES: u16 = 20;

/// What the command line may ask for.
pub struct Options {
    /// The first port to try.
    pub port: u16,
    /// The address to listen on.
    pub host: IpAddr,
    /// Whether to open the page in the desktop's browser.
    pub open: bool,
}

impl Default for Options {
    fn default() -> Self {
        Self { port: 8080, host: IpAddr::V4(Ipv4Addr::LOCALHOST), open: false }
    }
}

/// Installs what is missing, builds and serves until it is interrupted.
pub fn run(options: &Options) -> Result<()> {
    bundle::build()?;
    let server = start(options)?;
    println!("\nKerbstead is served; press Ctrl+C to stop.\n");
    let own = format!("http://127.0.0.1:{}/", server.port());
    let url = if options.host.is_unspecified() || options.host.is_loopback() { own } else { server.url() };
    println!("{url}");
    if options.host.is_unspecified() {
        announce_on_network(server.port());
    }
    if options.open && open::that_detached(&url).is_err() {
        println!("No browser could be opened from here; open the address above yourself.");
    }
    server.wait();
    Ok(())
}

fn start(options: &Options) -> Result<Server> {
    for port in options.port..=options.port.saturating_add(TRIES) {
        match Server::start(&workspace::dist(), options.host, port, "/") {
            Ok(server) => return Ok(server),
            Err(_) if taken(options.host, port) => {
                println!("Port {port} is taken; trying the next.");
            }
            Err(error) => return Err(error).context("the server could not start"),
        }
    }
    bail!("no free port from {} on: name another with --port", options.port)
}

/// Whether the trouble with a port is that someone else has it.
fn taken(host: IpAddr, port: u16) -> bool {
    let trial = std::net::TcpListener::bind((host, port));
    trial.is_err_and(|error| error.kind() == std::io::ErrorKind::AddrInUse)
}

fn announce_on_network(port: u16) {
    match network_address() {
        Some(address) => {
            println!("http://{address}:{port}/ (for other devices in the same network)");
        }
        None => println!("This machine's address in its network could not be found out."),
    }
}

/// The address that this machine would send from. Connecting a UDP socket sends nothing; the far address is
/// one that is reserved for examples.
fn network_address() -> Option<IpAddr> {
    let socket = UdpSocket::bind((Ipv4Addr::UNSPECIFIED, 0)).ok()?;
    socket.connect((Ipv4Addr::new(192, 0, 2, 1), 9)).ok()?;
    let address = socket.local_addr().ok()?.ip();
    (!address.is_unspecified() && !address.is_loopback()).then_some(address)
}
