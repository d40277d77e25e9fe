//! The terminal program, run as a person or another program would run it.

mod terminal {
    mod answers;
    mod calendar;
    mod days;
    mod desk;
    mod keys;
    mod kit;
    mod pace;
    mod printing;
    mod saving;
    mod store;
    mod told;
}
