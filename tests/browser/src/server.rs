//! The static server, as a child that can be stopped: signal lost.

use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

use crate::build::project;

/// `tools/serve.mjs` over one folder, on a port that stays the same when it is
/// stopped and started again.
#[derive(Debug)]
pub struct Server {
    folder: PathBuf,
    port: u16,
    child: Option<Child>,
}

impl Server {
    /// Serves the release build on a free port.
    ///
    /// # Panics
    /// When the server does not start, as when nothing was built.
    pub fn start() -> Self {
        Self::over(&project().join("dist"))
    }

    /// Serves `folder` on a free port.
    ///
    /// # Panics
    /// When the server does not start.
    pub fn over(folder: &Path) -> Self {
        let mut server = Self {
            folder: folder.to_owned(),
            port: 0,
            child: None,
        };
        server.resume();
        server
    }

    /// The origin, without a slash at the end.
    pub fn origin(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }

    /// The address of the program's page.
    pub fn url(&self) -> String {
        format!("{}/", self.origin())
    }

    /// Kills the server: signal lost.
    pub fn stop(&mut self) {
        if let Some(mut child) = self.child.take() {
            // Both fail only when it has ended already, which is what is wanted.
            let _ = child.kill();
            let _ = child.wait();
        }
    }

    /// Starts the server again on the same port: signal back.
    ///
    /// # Panics
    /// When it runs already or does not start.
    pub fn resume(&mut self) {
        assert!(self.child.is_none(), "the server runs already");
        let mut child = Command::new("node")
            .arg(project().join("tools/serve.mjs"))
            .arg("--dir")
            .arg(&self.folder)
            .args(["--port", &self.port.to_string(), "--until-stdin-ends"])
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .expect("node runs");
        let mut line = String::new();
        let out = child.stdout.take().expect("stdout is piped");
        BufReader::new(out)
            .read_line(&mut line)
            .expect("the server's first line");
        let port = line.trim().strip_prefix("listening http://127.0.0.1:");
        self.child = Some(child);
        self.port = port
            .and_then(|port| port.parse().ok())
            .unwrap_or_else(|| panic!("the server said {line:?}"));
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.stop();
    }
}
