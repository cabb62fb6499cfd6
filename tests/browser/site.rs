//! A site on this machine that can be changed, cut short and stopped.

use crate::driver::{page_of, saved_page};
use sha2::{Digest, Sha256};
use std::collections::HashMap;
use std::fs;
use std::io::{Read, Write};
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::Path;
use std::sync::{Arc, Mutex, MutexGuard};
use std::thread;

/// Names without a slash in front, and their bytes. The page is `index.html`.
pub type Files = HashMap<String, Vec<u8>>;

/// The packaged site, which lies beside the saved page.
pub fn packaged() -> Files {
    let folder = Path::new(&saved_page()).with_file_name("site");
    fs::read_dir(&folder)
        .expect("dist/site")
        .map(|entry| {
            let entry = entry.expect("a file of the site");
            let name = entry.file_name().to_string_lossy().into_owned();
            (name, fs::read(entry.path()).expect("its bytes"))
        })
        .collect()
}

/// The title of the page in a made-up edition.
pub const NEXT: &str = "Ionwright, the next edition";

/// The edition after this one: another title, and a worker that knows of it.
pub fn next(files: &Files) -> Files {
    let mut files = files.clone();
    let text = |files: &Files, name: &str| String::from_utf8(files[name].clone()).expect(name);
    let page = page_of(&files["index.html"]);
    let changed = page.replace(
        "<title>Ionwright</title>",
        &format!("<title>{NEXT}</title>"),
    );
    assert_ne!(changed, page);
    let worker = text(&files, "worker.js");
    let (_, rest) = worker.split_once("const EDITION = \"").expect("an edition");
    let edition = rest.split('"').next().unwrap_or_default();
    let units = std::iter::once(0xfeff).chain(changed.encode_utf16());
    let changed: Vec<u8> = units.flat_map(u16::to_le_bytes).collect();
    let worker = worker
        .replace(edition, "0123456789ab")
        .replace(&sha256(&files["index.html"]), &sha256(&changed));
    assert!(worker.contains(&sha256(&changed)));
    files.insert("index.html".to_owned(), changed);
    files.insert("worker.js".to_owned(), worker.into_bytes());
    files
}

fn sha256(bytes: &[u8]) -> String {
    Sha256::digest(bytes)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

#[derive(Default)]
struct Inner {
    files: Files,
    cut: Option<String>,
    stopped: bool,
}

/// The server. Stops with the value.
pub struct Site {
    at: SocketAddr,
    inner: Arc<Mutex<Inner>>,
    accepting: Option<thread::JoinHandle<()>>,
}

impl Site {
    /// Serves these files.
    pub fn start(files: Files) -> Self {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).expect("a free port");
        let at = listener.local_addr().expect("its address");
        let inner = Arc::new(Mutex::new(Inner {
            files,
            ..Inner::default()
        }));
        let shared = Arc::clone(&inner);
        let accepting = thread::spawn(move || {
            for stream in listener.incoming().flatten() {
                if lock(&shared).stopped {
                    return;
                }
                let shared = Arc::clone(&shared);
                thread::spawn(move || answer(stream, &shared));
            }
        });
        Self {
            at,
            inner,
            accepting: Some(accepting),
        }
    }

    /// Where it is.
    pub fn address(&self) -> String {
        format!("http://{}/", self.at)
    }

    /// Serves other files from now on; the connection breaks in the middle of the one named.
    pub fn serve(&self, files: Files, cut: Option<&str>) {
        let mut inner = lock(&self.inner);
        inner.files = files;
        inner.cut = cut.map(str::to_owned);
    }

    /// Stops it: from now on nobody listens there.
    pub fn stop(&mut self) {
        lock(&self.inner).stopped = true;
        let _ = TcpStream::connect(self.at);
        if let Some(accepting) = self.accepting.take() {
            accepting.join().expect("the server ends");
        }
    }

    /// Whether anybody listens there.
    pub fn is_there(&self) -> bool {
        TcpStream::connect(self.at).is_ok()
    }
}

impl Drop for Site {
    fn drop(&mut self) {
        self.stop();
    }
}

fn lock(inner: &Mutex<Inner>) -> MutexGuard<'_, Inner> {
    inner.lock().expect("no thread of the server failed")
}

fn answer(mut stream: TcpStream, inner: &Mutex<Inner>) {
    let mut request = Vec::new();
    let mut buffer = [0; 4096];
    while !request.windows(4).any(|end| end == b"\r\n\r\n") {
        match stream.read(&mut buffer) {
            Ok(n) if n > 0 => request.extend_from_slice(&buffer[..n]),
            // A browser opens connections ahead that it never uses.
            _ => return,
        }
    }
    let request = String::from_utf8_lossy(&request).into_owned();
    let path = request.split(' ').nth(1).unwrap_or_default();
    let name = path.split('?').next().unwrap_or_default();
    let name = match name.trim_start_matches('/') {
        "" => "index.html",
        name => name,
    };
    let (found, cut) = {
        let inner = lock(inner);
        let cut = inner.cut.as_deref() == Some(name);
        (inner.files.get(name).cloned(), cut)
    };
    let status = if found.is_some() {
        "200 OK"
    } else {
        "404 Not Found"
    };
    let bytes = found.unwrap_or_default();
    let kind = match name.rsplit('.').next() {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript",
        Some("png") => "image/png",
        _ => "application/manifest+json",
    };
    let head = format!(
        "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\nCache-Control: max-age=3600\r\nConnection: close\r\n\r\n",
        bytes.len()
    );
    let sent = if cut { bytes.len() / 2 } else { bytes.len() };
    let _ = stream
        .write_all(head.as_bytes())
        .and_then(|()| stream.write_all(&bytes[..sent]));
}
