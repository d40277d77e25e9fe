//! Keys pressed on the screen itself, for the windows of the system that WebDriver does not reach:
//! X11's core protocol and its XTEST extension, as much as that takes.

use super::screen::Screen;
use std::io::{Read, Write};
use std::os::unix::net::UnixStream;
use std::time::Duration;

/// Keys by the number they have on Xvfb's keyboard.
#[derive(Clone, Copy)]
pub(crate) enum Key {
    Escape = 9,
    Tab = 23,
    Return = 36,
    Down = 116,
}

const QUERY_EXTENSION: u8 = 98;
const FAKE_INPUT: u8 = 2;
const PRESSED: u8 = 2;
const RELEASED: u8 = 3;

/// A hand at the keyboard of a screen.
pub(crate) struct Keyboard {
    server: UnixStream,
    xtest: u8,
}

impl Keyboard {
    pub(crate) fn of(screen: &Screen) -> Self {
        let number = screen.display.trim_start_matches(':');
        let socket = format!("/tmp/.X11-unix/X{number}");
        let mut server = UnixStream::connect(socket).expect("the screen's socket");
        // Little end first, protocol 11.0, and no pass to show.
        let hello = [b'l', 0, 11, 0, 0, 0, 0, 0, 0, 0, 0, 0];
        server.write_all(&hello).expect("greets");
        let mut head = [0; 8];
        server.read_exact(&mut head).expect("is greeted");
        assert_eq!(head[0], 1, "the screen lets us in");
        let mut rest = vec![0; 4 * usize::from(u16::from_le_bytes([head[6], head[7]]))];
        server.read_exact(&mut rest).expect("hears of the screen");

        let name = *b"XTEST\0\0\0";
        let ask = [QUERY_EXTENSION, 0, 4, 0, 5, 0, 0, 0];
        server.write_all(&[ask, name].concat()).expect("asks");
        let mut reply = [0; 32];
        server.read_exact(&mut reply).expect("is answered");
        assert_eq!((reply[0], reply[8]), (1, 1), "the screen has XTEST");
        let xtest = reply[9];
        Self { server, xtest }
    }

    /// Presses keys one after another, as fast as a person does.
    pub(crate) fn press(&mut self, keys: &[Key]) {
        for key in keys {
            for what in [PRESSED, RELEASED] {
                let mut request = [0; 36];
                request[..6].copy_from_slice(&[self.xtest, FAKE_INPUT, 9, 0, what, *key as u8]);
                self.server.write_all(&request).expect("presses");
            }
            std::thread::sleep(Duration::from_millis(300));
        }
    }
}
