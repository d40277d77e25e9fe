//! How the page's scripts run: read as they stand, and not compiled. They are short, and wait for
//! Rust most of the time; what the engine's compiler makes of them takes more memory than all else
//! the page holds, and a page without it needs no memory that can be both written and run.

/// The engine's own switch for its compiler. It is looked at when the engine starts, in the
/// processes that the engine starts for itself too.
#[cfg(target_os = "linux")]
const COMPILER: &str = "JSC_useJIT";

/// Starts this program anew, in its own place, with the switch turned off. Where somebody has set
/// it already, and where that fails, it goes on as it is.
#[cfg(target_os = "linux")]
pub(crate) fn without_compiler() {
    use std::os::unix::process::CommandExt;
    if std::env::var_os(COMPILER).is_some() {
        return;
    }
    if let Ok(this) = std::env::current_exe() {
        let arguments = std::env::args_os().skip(1);
        // Nothing comes back from it but a failure.
        let _failed = std::process::Command::new(this)
            .args(arguments)
            .env(COMPILER, "0")
            .exec();
    }
}

/// Other engines have no such switch.
#[cfg(not(target_os = "linux"))]
pub(crate) fn without_compiler() {}
