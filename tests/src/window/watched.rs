//! That the watch on whom the program speaks to can see, and what it looks for.

use super::network::machine;
use super::open_example;
use std::time::{Duration, Instant};

#[test]
fn a_call_names_the_machine_it_is_for() {
    let cases = [
        (
            "1 connect(17, {sa_family=AF_INET, sin_port=htons(53), sin_addr=inet_addr(\"192.0.2.1\")}, 16) = 0",
            Some("192.0.2.1"),
        ),
        (
            "1 connect(17, {sa_family=AF_INET6, sin6_port=htons(443), inet_pton(AF_INET6, \"2001:db8::1\", &sin6_addr)}, 28) = -1",
            Some("2001:db8::1"),
        ),
        (
            "1 connect(17, {sa_family=AF_INET, sin_port=htons(4000), sin_addr=inet_addr(\"127.0.0.1\")}, 16) = 0",
            None,
        ),
        (
            "1 connect(4, {sa_family=AF_UNIX, sun_path=\"/run/dbus\"}, 110) = 0",
            None,
        ),
    ];
    for (call, expected) in cases {
        assert_eq!(machine(call).as_deref(), expected, "{call}");
    }
}

/// The watch can see: a name that is looked up, which no content policy forbids, is told.
/// That all other windows of these tests speak to nobody is checked whenever one closes.
#[test]
fn a_planted_look_up_is_seen() {
    let (_folder, _file, mut window) = open_example();
    let Some(watch) = window.watch.take() else {
        return;
    };
    window.wait_for_text("figure-length", " m");
    assert!(watch.outside().is_empty(), "before anything was planted");
    window.script(
        "const link = document.createElement('link'); link.rel = 'preconnect';\
         link.href = 'https://planted.example.org/'; document.head.append(link)",
    );
    let end = Instant::now() + Duration::from_secs(20);
    while watch.outside().is_empty() {
        assert!(Instant::now() < end, "the watch saw nothing");
        std::thread::sleep(Duration::from_millis(50));
    }
}
