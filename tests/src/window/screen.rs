//! A screen that nobody sees: Xvfb on a display number of its own choosing.

use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};

pub(crate) struct Screen {
    server: Child,
    pub(crate) display: String,
}

impl Screen {
    pub(crate) fn start() -> Self {
        let mut server = Command::new("Xvfb")
            .args([
                "-displayfd",
                "1",
                "-screen",
                "0",
                "1280x800x24",
                "-nolisten",
                "tcp",
            ])
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("Xvfb is there: cargo xtask test installs it");
        let mut number = String::new();
        let out = server.stdout.as_mut().expect("its output");
        BufReader::new(out)
            .read_line(&mut number)
            .expect("the display's number");
        Self {
            server,
            display: format!(":{}", number.trim()),
        }
    }
}

impl Drop for Screen {
    fn drop(&mut self) {
        let _ = self.server.kill();
        let _ = self.server.wait();
    }
}
