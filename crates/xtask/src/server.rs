//! A small server for the files of one folder.

use crate::failure::{Explain, Failure, Outcome};
use std::fs;
use std::io::ErrorKind;
use std::net::{IpAddr, SocketAddr, TcpListener};
use std::path::{Component, Path, PathBuf};
use std::sync::Arc;
use std::thread;
use tiny_http::{Header, Method, Request, Response, Server};

/// How many further ports are tried when one is busy.
const MORE_PORTS: u16 = 20;

/// Takes a port, the wanted one or the next that is free. Port 0 takes any.
pub fn listen(ip: IpAddr, wanted: u16) -> Outcome<TcpListener> {
    for port in wanted..=wanted.saturating_add(MORE_PORTS) {
        match TcpListener::bind((ip, port)) {
            Ok(listener) => return Ok(listener),
            Err(cause) if cause.kind() == ErrorKind::AddrInUse => {
                crate::report::note(&format!("Port {port} is busy; trying the next."));
            }
            Err(cause) => {
                return Err(Failure::new(format!(
                    "Port {port} cannot be opened: {cause}"
                )));
            }
        }
    }
    Err(Failure::new(format!(
        "Port {wanted} and the {MORE_PORTS} after it are busy: name another with `--port N`."
    )))
}

/// Serves the folder from now on, in threads of its own, until this program ends.
pub fn start(listener: TcpListener, folder: &Path) -> Outcome<SocketAddr> {
    let address = listener
        .local_addr()
        .explain(|| "The server has no address".to_owned())?;
    let folder = folder
        .canonicalize()
        .explain(|| format!("{} cannot be served", folder.display()))?;
    let server =
        Server::from_listener(listener, None).explain(|| "The server cannot start".to_owned())?;
    let server = Arc::new(server);
    // One slow phone shall not hold up the others.
    for _ in 0..4 {
        let (server, folder) = (Arc::clone(&server), folder.clone());
        thread::spawn(move || {
            for request in server.incoming_requests() {
                answer(request, &folder);
            }
        });
    }
    Ok(address)
}

fn answer(request: Request, folder: &Path) {
    let response = if !matches!(request.method(), Method::Get | Method::Head) {
        plain(405, "Only GET and HEAD are answered here.")
    } else {
        let file = file_for(folder, request.url()).filter(|file| file.is_file());
        match file.map(|file| (fs::read(&file), content_type(&file))) {
            Some((Ok(bytes), kind)) => {
                Response::from_data(bytes).with_header_text("Content-Type", kind)
            }
            _ => plain(404, "There is no such file here."),
        }
    };
    let response = response
        // Kept but asked about each time: after a rebuild the new page must come.
        .with_header_text("Cache-Control", "no-cache")
        .with_header_text("X-Content-Type-Options", "nosniff");
    // A browser that went away needs no answer.
    let _ = request.respond(response);
}

type Answer = Response<std::io::Cursor<Vec<u8>>>;

fn plain(status: u16, sentence: &str) -> Answer {
    Response::from_data(sentence.as_bytes())
        .with_status_code(status)
        .with_header_text("Content-Type", "text/plain; charset=utf-8")
}

trait WithHeaderText {
    fn with_header_text(self, name: &str, value: &str) -> Self;
}

impl WithHeaderText for Answer {
    fn with_header_text(self, name: &str, value: &str) -> Self {
        match Header::from_bytes(name, value) {
            Ok(header) => self.with_header(header),
            Err(()) => self,
        }
    }
}

/// The file an address means, inside the folder or none.
fn file_for(folder: &Path, address: &str) -> Option<PathBuf> {
    let path = address.split(['?', '#']).next()?.strip_prefix('/')?;
    let mut file = folder.join(inner_path(&decoded(path)?)?);
    if file.is_dir() {
        file.push("index.html");
    }
    // A link inside the folder may point out of it.
    file.canonicalize()
        .ok()
        .filter(|file| file.starts_with(folder))
}

/// A path that only goes down; none for one that climbs, starts at the root or hides its separators.
fn inner_path(path: &str) -> Option<PathBuf> {
    if path.contains(['\\', '\0', ':']) {
        return None;
    }
    let path = Path::new(path);
    path.components()
        .all(|part| matches!(part, Component::Normal(_)))
        .then(|| path.to_path_buf())
}

/// Undoes the %-escapes of an address.
fn decoded(text: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(text.len());
    let mut rest = text.as_bytes();
    while let [first, tail @ ..] = rest {
        if *first == b'%' {
            let digits = tail
                .get(..2)
                .filter(|digits| digits.iter().all(u8::is_ascii_hexdigit))?;
            bytes.push(u8::from_str_radix(std::str::from_utf8(digits).ok()?, 16).ok()?);
            rest = &tail[2..];
        } else {
            bytes.push(*first);
            rest = tail;
        }
    }
    String::from_utf8(bytes).ok()
}

fn content_type(file: &Path) -> &'static str {
    match file
        .extension()
        .and_then(|extension| extension.to_str())
        .unwrap_or_default()
    {
        // As most servers say of every page; the mark at the start of ours is louder, and this holds it to that.
        "html" => "text/html; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "js" | "mjs" => "text/javascript; charset=utf-8",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "ico" => "image/x-icon",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_only_go_down() {
        for bad in [
            "../a",
            "a/../../b",
            "/etc/passwd",
            "..",
            "a\\..\\b",
            "c:/x",
            "a\0b",
            "./a/..",
        ] {
            assert_eq!(inner_path(bad), None, "{bad}");
        }
        assert_eq!(inner_path("a/b.js"), Some(PathBuf::from("a/b.js")));
        assert_eq!(inner_path(""), Some(PathBuf::new()));
    }

    #[test]
    fn escapes_are_undone_once() {
        assert_eq!(decoded("a%20b").as_deref(), Some("a b"));
        assert_eq!(decoded("%252e").as_deref(), Some("%2e"));
        assert_eq!(decoded("%2"), None);
        assert_eq!(decoded("%+1"), None);
        assert_eq!(decoded("%ff"), None);
    }

    #[test]
    fn addresses_stay_in_the_folder() -> Outcome<()> {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
            .canonicalize()
            .explain(String::new)?;
        assert_eq!(
            file_for(&folder, "/Cargo.toml?a=..#b"),
            Some(folder.join("Cargo.toml"))
        );
        assert_eq!(
            file_for(&folder, "/src/start.js"),
            Some(folder.join("src/start.js"))
        );
        for bad in [
            "/../quantity/Cargo.toml",
            "/%2e%2e/quantity/Cargo.toml",
            "//etc/passwd",
            "Cargo.toml",
            "/none",
            "/",
        ] {
            assert_eq!(file_for(&folder, bad), None, "{bad}");
        }
        Ok(())
    }

    #[test]
    fn the_program_has_its_own_type() {
        assert_eq!(content_type(Path::new("page_bg.wasm")), "application/wasm");
    }

    #[test]
    fn a_busy_port_gives_the_next() -> Outcome<()> {
        let ip = IpAddr::from([127, 0, 0, 1]);
        let first = listen(ip, 0)?;
        let busy = first.local_addr().explain(String::new)?.port();
        let second = listen(ip, busy)?.local_addr().explain(String::new)?.port();
        assert!(second > busy);
        Ok(())
    }
}
