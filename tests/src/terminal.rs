//! The terminal program, run as a person or another program would run it.

mod terminal {
    mod answers;
    mod desk;
    mod keys;
    mod kit;
    mod printing;
    mod saving;
    mod store;
}
