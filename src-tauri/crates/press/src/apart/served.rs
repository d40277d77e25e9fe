//! The second process: does the jobs it is given, one after the other, and nothing else.

use std::io::{Read, Write};
use std::sync::mpsc::channel;

use super::wire::{self, Request, Told, Want};
use crate::{Error, Press, fault};

/// Does the jobs read from `input` and writes their pages to `output`, until the input ends.
///
/// The process is then ended at once, even in the middle of a job: whoever gave the job is gone,
/// and one that runs for ever would be left behind.
///
/// # Errors
/// If the output can't be written to.
pub fn serve(
    mut input: impl Read + Send + 'static,
    output: &mut impl Write,
) -> std::io::Result<()> {
    let (send, jobs) = channel();
    std::thread::spawn(move || {
        while let Ok(Some(request)) = Request::read(&mut input) {
            if send.send(request).is_err() {
                break;
            }
        }
        std::process::exit(0);
    });
    let press = Press::new();
    for request in jobs {
        wire::write_answer(output, &done(&press, &request))?;
    }
    Ok(())
}

fn done(press: &Press, request: &Request) -> Result<(Told, Vec<u8>), Error> {
    request.with_job(|job| match request.want {
        Want::Pdf => press.pdf(job).map(|it| {
            let told = Told {
                pages: it.pages,
                unprintable: it.unprintable,
            };
            (told, it.pdf)
        }),
        Want::Page(number) => press.page(job, number).map(|it| {
            let told = Told {
                pages: it.pages,
                unprintable: Vec::new(),
            };
            (told, it.svg.into_bytes())
        }),
        Want::Sheets => press.sheets(job).and_then(|it| {
            let told = Told {
                pages: it.sheets.len(),
                unprintable: it.unprintable,
            };
            let sheets = serde_json::to_vec(&it.sheets).map_err(|e| fault(&e.to_string()))?;
            Ok((told, sheets))
        }),
    })
}
