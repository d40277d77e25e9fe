//! Whom the program speaks to: every connection it and its helpers try is written down by the
//! system's own tracer, and none may leave the machine.
//!
//! The tracer starts beside the program and does not stand between it and its driver. Speaking
//! to the machine itself is allowed: that is how the driver reaches the window.

use std::fs;
use std::net::IpAddr;
use std::path::{Path, PathBuf};
use std::process::Command;

/// What begins a conversation, with an address of a machine or without.
const CALLS: &str = "trace=connect,sendto";

/// A program under watch.
pub(crate) struct Watch {
    tracer: PathBuf,
    log: tempfile::NamedTempFile,
}

impl Watch {
    /// A watch, unless this machine does not let one program trace another.
    pub(crate) fn begin() -> Option<Self> {
        let tracer = PathBuf::from("/usr/bin/strace");
        let tried = Command::new(&tracer)
            .args(["-f", "--seccomp-bpf", "-qq", "-e", CALLS, "true"])
            .output();
        if !tried.is_ok_and(|tried| tried.status.success()) {
            println!("not checked: strace is missing or may not trace here");
            return None;
        }
        let log = tempfile::NamedTempFile::new().expect("a log");
        Some(Self { tracer, log })
    }

    /// What to run in place of a program, so that it is watched.
    pub(crate) fn around(&self, program: &Path, file: Option<&Path>) -> (PathBuf, Vec<PathBuf>) {
        let arguments = ["-D", "-f", "--seccomp-bpf", "-qq", "-e", CALLS, "-o"];
        let mut arguments: Vec<PathBuf> = arguments.iter().map(PathBuf::from).collect();
        arguments.push(self.log.path().to_owned());
        arguments.push(program.to_owned());
        arguments.extend(file.map(Path::to_owned));
        (self.tracer.clone(), arguments)
    }

    /// The other machines it tried to speak to.
    pub(crate) fn outside(&self) -> Vec<String> {
        let log = fs::read(self.log.path()).expect("the log reads");
        let log = String::from_utf8_lossy(&log);
        log.lines().filter_map(machine).collect()
    }
}

/// The other machine a traced call names; none where it stays here.
pub(crate) fn machine(call: &str) -> Option<String> {
    // As `sin_addr=inet_addr("192.0.2.1")` and `inet_pton(AF_INET6, "2001:db8::1", ...)`.
    let (_, after) = call
        .split_once("inet_addr(\"")
        .or_else(|| call.split_once("inet_pton(AF_INET6, \""))?;
    let (address, _) = after.split_once('"')?;
    let here = address.parse().is_ok_and(|it: IpAddr| it.is_loopback());
    (!here).then(|| address.to_owned())
}
