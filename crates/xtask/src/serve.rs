//! `cargo xtask serve`: the page on this machine, rebuilt when a source changes.

use crate::debian::Debian;
use crate::failure::Outcome;
use crate::package::{self, Package};
use crate::process;
use crate::report;
use crate::server;
use crate::toolchain;
use crate::watch::Sources;
use std::net::{IpAddr, Ipv4Addr, UdpSocket};
use std::thread;
use std::time::Duration;

/// How to serve.
pub struct Wishes {
    /// The port to try first.
    pub port: u16,
    /// Whether other machines may open the page.
    pub lan: bool,
    /// Whether rustup may add the target.
    pub rustup: bool,
}

/// Builds, serves and rebuilds until stopped.
pub fn serve(wishes: &Wishes) -> Outcome<()> {
    let compiler = toolchain::choose(wishes.rustup, &mut Debian::default())?;
    let workspace = process::workspace();
    // Looked at before building: what changes meanwhile is built next.
    let mut seen = Sources::look(&workspace);
    let package = package::make(compiler)?;
    warn_if_large(&package);
    let ip = if wishes.lan {
        Ipv4Addr::UNSPECIFIED
    } else {
        Ipv4Addr::LOCALHOST
    };
    let listener = server::listen(IpAddr::V4(ip), wishes.port)?;
    let address = server::start(listener, &package.site)?;
    report::announce(
        &format!("The page is at http://127.0.0.1:{}", address.port()),
        "stop with Ctrl+C",
    );
    if wishes.lan {
        let shown = own_address().map_or_else(
            || "<this machine's address>".to_owned(),
            |ip| ip.to_string(),
        );
        report::note(&format!(
            "Everyone on this network can open it at http://{shown}:{}. Over plain http a browser offers neither \
             installing nor keeping the screen awake.",
            address.port()
        ));
    }
    loop {
        thread::sleep(Duration::from_secs(1));
        let now = Sources::look(&workspace);
        if now == seen {
            continue;
        }
        seen = now;
        match package::make(compiler) {
            Ok(package) => {
                warn_if_large(&package);
                report::announce("The page is new", "reload it in the browser");
            }
            Err(failure) => eprintln!(
                "{failure}\n   The last good page is still served; save a source to try again."
            ),
        }
    }
}

fn warn_if_large(package: &Package) {
    if let Err(failure) = package.check_budget() {
        report::note(&failure.to_string());
    }
}

/// The address under which others reach this machine. Choosing a way sends nothing.
fn own_address() -> Option<IpAddr> {
    let socket = UdpSocket::bind((Ipv4Addr::UNSPECIFIED, 0)).ok()?;
    socket.connect((Ipv4Addr::new(192, 0, 2, 1), 9)).ok()?;
    socket.local_addr().ok().map(|address| address.ip())
}
