//! The kit store as its callers use it: files on a disk, other programs, spreadsheets.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "all of it is tests, helpers included"
)]

mod store {
    mod bookings;
    mod desk;
    mod disks;
    mod home;
    mod import;
    mod lots;
    mod opening;
    mod others;
    mod pace_book;
    mod pace_file;
    mod power;
    mod round_trip;
    mod separated;
    mod workbooks;
}
