//! The terminal program, run as a person or another program would run it.

mod terminal {
    mod again;
    mod answers;
    mod calendar;
    mod days;
    mod desk;
    mod editions;
    mod keys;
    mod kit;
    mod own_pages;
    mod pace;
    mod printing;
    mod private;
    mod saving;
    mod store;
    mod told;
}
