//! One browser through one WebDriver client, and what a person does with a page.

use fantoccini::wd::WebDriverCompatibleCommand;
use fantoccini::{Client, ClientBuilder, Locator};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};
use std::env;
use std::io::{Read, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::process::{Child, Command, Stdio};
use std::time::Duration;

/// Address of a hoop's wire, a size of the example.
pub const TORUS_WIRE: &str = "pieces/p1/extent/parts/a/shape/torus/wire_d";
/// Address of a hoop's inside.
pub const TORUS_BORE: &str = "pieces/p1/extent/parts/a/shape/torus/bore";

/// The two ways the page comes: a saved file without network, and a site.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// From a file, the network off.
    File,
    /// From a server.
    Site,
}

/// The ways to be tested in this run, with their addresses.
pub fn ways() -> Vec<(Way, String)> {
    let site = env::var("IONWRIGHT_SITE").expect("IONWRIGHT_SITE: run `cargo xtask test`");
    let mut ways = vec![(Way::Site, site)];
    if env::var("IONWRIGHT_ONLY").as_deref() != Ok("site") {
        ways.push((Way::File, format!("file://{}", saved_page())));
    }
    ways
}

/// The path of the saved page; none where only a site is tested.
pub fn saved_page() -> String {
    env::var("IONWRIGHT_PAGE").expect("IONWRIGHT_PAGE: run `cargo xtask test`")
}

/// The text of a page's file, which is in UTF-16 with a mark at its start.
pub fn page_text(file: &std::path::Path) -> String {
    page_of(&std::fs::read(file).expect("a page"))
}

/// The same of a file's bytes.
pub fn page_of(bytes: &[u8]) -> String {
    let mut units = bytes
        .chunks(2)
        .map(|two| u16::from_le_bytes([two[0], two[1]]));
    assert_eq!(units.next(), Some(0xfeff));
    String::from_utf16(&units.collect::<Vec<_>>()).expect("UTF-16")
}

/// Whether the saved page belongs to this run.
pub fn has_saved_page() -> bool {
    env::var("IONWRIGHT_ONLY").as_deref() != Ok("site")
}

/// A window's size and what else is asked of the browser.
#[derive(Clone, Copy, Debug)]
pub struct Window {
    /// Inner width, CSS pixels.
    pub width: u32,
    /// Inner height, CSS pixels.
    pub height: u32,
    /// Whether the browser may keep anything.
    pub storage: bool,
}

/// A phone.
pub const PHONE: Window = Window {
    width: 360,
    height: 800,
    storage: true,
};

/// A browser with one window. Ends with the value.
pub struct Browser {
    driver: Child,
    port: u16,
    session: String,
    /// The client, for what has no helper.
    pub client: Client,
}

impl Drop for Browser {
    /// Ends the session before the driver: a driver that is killed leaves its browser running, and after some dozen tests
    /// the machine has no memory left.
    fn drop(&mut self) {
        let _ = end_session(self.port, &self.session);
        let _ = self.driver.kill();
        let _ = self.driver.wait();
    }
}

/// A window of the driver at a port. A driver that has only just begun to listen may reset what comes first.
async fn session_at(port: u16, capabilities: &serde_json::Map<String, Value>) -> Client {
    let mut tries = 0;
    loop {
        tries += 1;
        let asked = ClientBuilder::new(HttpConnector::new())
            .capabilities(capabilities.clone())
            .connect(&format!("http://127.0.0.1:{port}"))
            .await;
        match asked {
            Ok(client) => return client,
            Err(_) if tries < 3 => tokio::time::sleep(Duration::from_millis(500)).await,
            Err(why) => panic!("a browser window: {why:?}"),
        }
    }
}

/// Asks the driver to close the browser, and waits until it has.
fn end_session(port: u16, session: &str) -> std::io::Result<()> {
    let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, port))?;
    stream.set_read_timeout(Some(Duration::from_secs(10)))?;
    write!(
        stream,
        "DELETE /session/{session} HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nContent-Length: 0\r\nConnection: close\r\n\r\n"
    )?;
    let mut answer = Vec::new();
    stream.read_to_end(&mut answer)?;
    Ok(())
}

impl Browser {
    /// Opens a window.
    pub async fn open(window: Window) -> Self {
        Self::open_with(window, json!({})).await
    }

    /// Opens a window of a browser with wishes of its own, by the names the browser keeps them under.
    pub async fn open_with(window: Window, wishes: Value) -> Self {
        let port = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))
            .and_then(|l| l.local_addr())
            .expect("a free port")
            .port();
        let program = env::var("CHROMEDRIVER").unwrap_or_else(|_| "chromedriver".to_owned());
        let driver = Command::new(&program)
            .arg(format!("--port={port}"))
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap_or_else(|e| panic!("{program}: {e}"));
        for _ in 0..200 {
            if TcpStream::connect((Ipv4Addr::LOCALHOST, port)).is_ok() {
                break;
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        let client = session_at(port, &capabilities(window, wishes)).await;
        let session = client.session_id().await.ok().flatten().unwrap_or_default();
        let browser = Self {
            driver,
            port,
            session,
            client,
        };
        let clock = json!({"source": include_str!("scripts/clock.js")});
        browser
            .cdp("Page.addScriptToEvaluateOnNewDocument", clock)
            .await;
        browser
    }

    /// Goes to an address and waits until the program runs. A file is opened with the network off.
    pub async fn go(&self, way: Way, address: &str) {
        let offline = json!({"offline": way == Way::File, "latency": 0, "downloadThroughput": -1, "uploadThroughput": -1});
        self.cdp("Network.emulateNetworkConditions", offline).await;
        self.client.goto(address).await.expect("the page");
        self.running().await;
    }

    /// Waits until the program runs.
    pub async fn running(&self) {
        self.until("document.documentElement.dataset.state === 'running'")
            .await;
    }

    /// What is kept is cleared as the page goes: after the page has written what it had not written yet.
    pub async fn forgets(&self) {
        self.eval(
            "void addEventListener('pagehide', () => { try { localStorage.clear(); sessionStorage.clear(); } catch {} })",
        )
        .await;
    }

    /// Loads the page again.
    pub async fn reload(&self) {
        self.client.refresh().await.expect("the page again");
        self.running().await;
    }

    /// The value of a JavaScript expression.
    pub async fn eval(&self, expression: &str) -> Value {
        self.client
            .execute(&format!("return ({expression});"), Vec::new())
            .await
            .unwrap_or_else(|e| panic!("{expression}: {e}"))
    }

    /// Waits until an expression is true, at most ten seconds.
    pub async fn until(&self, expression: &str) {
        for _ in 0..200 {
            if self.eval(expression).await == Value::Bool(true) {
                return;
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        panic!(
            "never came true: {expression}; the page says {}",
            self.eval("document.body.innerText").await
        );
    }

    /// The text of the first element of a selector, its no-break spaces plain.
    pub async fn text(&self, selector: &str) -> String {
        let found = self
            .client
            .find(Locator::Css(selector))
            .await
            .unwrap_or_else(|e| panic!("{selector}: {e}"));
        found.text().await.expect("its text").replace('\u{a0}', " ")
    }

    /// What stands in the field at an address.
    pub async fn field(&self, address: &str) -> String {
        let value = self
            .eval(&format!("document.getElementById('{address}').value"))
            .await;
        value.as_str().unwrap_or_default().to_owned()
    }

    /// Types into the field at an address with real keys, replacing what stands there, and leaves it.
    pub async fn type_in(&self, address: &str, text: &str) {
        self.eval(&format!("document.getElementById('{address}').select()"))
            .await;
        let field = self
            .client
            .find(Locator::Id(address))
            .await
            .unwrap_or_else(|e| panic!("{address}: {e}"));
        field.send_keys(text).await.expect("keys");
        self.eval("document.activeElement.blur()").await;
    }

    /// Taps the first element of a selector.
    pub async fn tap(&self, selector: &str) {
        self.eval(&format!(
            "document.querySelector(`{selector}`).scrollIntoView({{block: 'center'}})"
        ))
        .await;
        let found = self
            .client
            .find(Locator::Css(selector))
            .await
            .unwrap_or_else(|e| panic!("{selector}: {e}"));
        found
            .click()
            .await
            .unwrap_or_else(|e| panic!("{selector}: {e}"));
    }

    /// A command of the browser's own debugging protocol.
    pub async fn cdp(&self, command: &str, params: Value) -> Value {
        let command = Cdp {
            body: json!({"cmd": command, "params": params}).to_string(),
        };
        self.client
            .issue_cmd(command)
            .await
            .expect("the debugging command")
    }
}

#[derive(Debug)]
struct Cdp {
    body: String,
}

impl WebDriverCompatibleCommand for Cdp {
    fn endpoint(
        &self,
        base: &url::Url,
        session: Option<&str>,
    ) -> Result<url::Url, url::ParseError> {
        base.join(&format!(
            "session/{}/goog/cdp/execute",
            session.unwrap_or_default()
        ))
    }

    fn method_and_body(&self, _: &url::Url) -> (http::Method, Option<String>) {
        (http::Method::POST, Some(self.body.clone()))
    }
}

fn capabilities(window: Window, wishes: Value) -> serde_json::Map<String, Value> {
    let chrome = env::var("CHROME").unwrap_or_else(|_| "chromium".to_owned());
    let mut options = json!({
        "binary": chrome,
        "args": ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
            "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        "mobileEmulation": {"deviceMetrics": {"width": window.width, "height": window.height, "pixelRatio": 2,
            "touch": window.width < 900}},
    });
    options["prefs"] = wishes;
    if !window.storage {
        options["prefs"]["profile.default_content_setting_values.cookies"] = json!(2);
    }
    let all = json!({"goog:chromeOptions": options});
    all.as_object().cloned().unwrap_or_default()
}
