//! Switches that are looked at once, when a process starts. The program starts itself anew, in its
//! own place, with them set; the processes of its page have them from it.

/// Each switch, and what it is set to unless somebody has set it already.
#[cfg(target_os = "linux")]
fn switches() -> [(&'static str, String); 5] {
    let processors = std::thread::available_parallelism().map_or(1, usize::from);
    [
        // The page's scripts are read as they stand, and not compiled. They are short, and wait for
        // Rust most of the time; what the engine's compiler makes of them takes more memory than all
        // else the page holds, and a page without it needs no memory that can be both written and run.
        ("JSC_useJIT", "0".to_owned()),
        // Nothing is drawn by a graphics pipeline here (`engine.rs`). Without this the toolkit sets one
        // up all the same, for the program and for the page's process.
        ("GDK_GL", "disable".to_owned()),
        // Memory that was freed goes back to the system from 128 KiB on, the C library's own first
        // threshold. Left alone it rises with the largest block ever freed: one large page looked at,
        // and all day more is kept.
        ("MALLOC_TRIM_THRESHOLD_", "131072".to_owned()),
        // The C library would set up to eight parts of its memory apart for each processor, and what
        // is free in one is of no use to the others. No more threads ask at once than there are
        // processors.
        ("MALLOC_ARENA_MAX", processors.to_string()),
        // The same of the program's own allocator. What it has freed goes back to the system within a
        // second, by a thread of its own, so that a window that stands still does not keep it.
        (
            "_RJEM_MALLOC_CONF",
            format!("narenas:{processors},dirty_decay_ms:1000,background_thread:true"),
        ),
    ]
}

/// Starts this program anew with the switches that are not set. Where that fails, it goes on as
/// it is.
#[cfg(target_os = "linux")]
pub(crate) fn set() {
    use std::os::unix::process::CommandExt;
    let missing: Vec<_> = switches()
        .into_iter()
        .filter(|(name, _)| std::env::var_os(name).is_none())
        .collect();
    if missing.is_empty() {
        return;
    }
    if let Ok(this) = std::env::current_exe() {
        let arguments = std::env::args_os().skip(1);
        // Nothing comes back from it but a failure.
        let _failed = std::process::Command::new(this)
            .args(arguments)
            .envs(missing)
            .exec();
    }
}

/// Other systems have no such switches.
#[cfg(not(target_os = "linux"))]
pub(crate) fn set() {}
